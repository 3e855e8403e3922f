"use client";

import {
  createContext,
  type ReactNode,
  type TransitionStartFunction,
  useContext,
  useMemo,
  useState,
  useTransition,
} from "react";

interface Shared {
  /** Choices were made that the preview below does not show yet. */
  readonly isUnread: boolean;
  readonly setUnread: (unread: boolean) => void;
  /** Rows were left out or taken in again, and what that changes is not counted yet. */
  readonly isCounting: boolean;
  readonly startCounting: TransitionStartFunction;
}

const Context = createContext<Shared | null>(null);

/** Lets the load button know of choices that what it would do does not follow yet. */
export function StagedState({ children }: { readonly children: ReactNode }) {
  const [isUnread, setUnread] = useState(false);
  const [isCounting, startCounting] = useTransition();
  const shared = useMemo(() => ({ isUnread, setUnread, isCounting, startCounting }), [isUnread, isCounting]);
  return <Context value={shared}>{children}</Context>;
}

export function useStagedState(): Shared {
  const shared = useContext(Context);
  if (!shared) throw new Error("The parts of a staged file stand inside StagedState");
  return shared;
}
