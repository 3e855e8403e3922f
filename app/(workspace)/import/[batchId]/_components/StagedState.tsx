"use client";

import { createContext, type ReactNode, useContext, useMemo, useState } from "react";

interface Shared {
  /** Choices were made that the preview below does not show yet. */
  readonly isUnread: boolean;
  readonly setUnread: (unread: boolean) => void;
}

const Context = createContext<Shared>({ isUnread: false, setUnread: () => undefined });

/** Lets the load button know of choices that were not read again yet. */
export function StagedState({ children }: { readonly children: ReactNode }) {
  const [isUnread, setUnread] = useState(false);
  const shared = useMemo(() => ({ isUnread, setUnread }), [isUnread]);
  return <Context value={shared}>{children}</Context>;
}

export function useStagedState(): Shared {
  return useContext(Context);
}
