import type { KeyboardEvent } from "react";

const STEPS: Readonly<Record<string, readonly [row: number, column: number]>> = {
  ArrowUp: [-1, 0],
  ArrowDown: [1, 0],
  ArrowLeft: [0, -1],
  ArrowRight: [0, 1],
};

/** Moves the focus from cell to cell of a matrix with the arrow keys; cells carry `data-row` and `data-column`. */
export function walkCells(event: KeyboardEvent<HTMLElement>): void {
  const step = STEPS[event.key];
  const { row, column } = (event.target as HTMLElement).dataset;
  if (!step || row === undefined || column === undefined) return;
  const next = event.currentTarget.querySelector<HTMLElement>(
    `[data-row="${Number(row) + step[0]}"][data-column="${Number(column) + step[1]}"]`,
  );
  if (!next) return;
  event.preventDefault();
  next.focus();
}
