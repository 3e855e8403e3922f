"use client";

import { useEffect } from "react";
import { isAlone } from "@/app/_ui/keys/aloneKeys";

const STEPS: Readonly<Record<string, number>> = { j: 1, k: -1 };

/** Moves the focus to the next row link of the page, over all its tables. */
function step(by: number): void {
  const links = [...document.querySelectorAll<HTMLElement>("main [data-row-link]")];
  const row = document.activeElement?.closest("tr");
  const at = links.findIndex((link) => link.closest("tr") === row);
  const next = at < 0 ? (by > 0 ? 0 : links.length - 1) : Math.min(links.length - 1, Math.max(0, at + by));
  links[next]?.focus();
  links[next]?.scrollIntoView({ block: "nearest" });
}

/** Presses what answers to a letter in the row that holds the focus; false when nothing does. */
function press(letter: string): boolean {
  const row = document.activeElement?.closest("tr");
  const button = row?.querySelector<HTMLElement>(`[data-key="${letter}"] button`);
  button?.click();
  return button !== undefined && button !== null;
}

const isInDialog = ({ target }: KeyboardEvent) => (target as HTMLElement).closest("[role=dialog]") !== null;

function hear(event: KeyboardEvent): void {
  if (!/^[a-z]$/.test(event.key) || isInDialog(event) || !isAlone(event)) return;
  const by = STEPS[event.key];
  if (by !== undefined) step(by);
  if (by !== undefined || press(event.key)) event.preventDefault();
}

/**
 * Walks the rows of a page with j and k, and presses the row's own button for another letter, marked by `data-key`.
 *
 * Enter opens a row, since its link holds the focus. Nothing happens while something is typed or a dialog is open.
 */
export function useRowKeys(): void {
  useEffect(() => {
    window.addEventListener("keydown", hear);
    return () => window.removeEventListener("keydown", hear);
  }, []);
}
