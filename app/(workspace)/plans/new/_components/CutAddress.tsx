"use client";

import { useRouter } from "next/navigation";
import { createContext, type ReactNode, useContext, useTransition } from "react";
import { type PlanQuery, planHref } from "@/lib/view/planQuery";

interface Steering {
  readonly query: PlanQuery;
  readonly pending: boolean;
  /** Shows the cut of another choice; the browser's back button takes it back. */
  readonly show: (next: PlanQuery) => void;
}

const Steer = createContext<Steering | null>(null);

interface CutAddressProps {
  readonly query: PlanQuery;
  readonly asOf: string;
  readonly children: ReactNode;
}

/** Keeps the whole cut in the address, so it can be sent, reloaded and gone back from. */
export function CutAddress({ query, asOf, children }: CutAddressProps) {
  const router = useRouter();
  const [pending, start] = useTransition();
  const show = (next: PlanQuery) => start(() => router.push(planHref(next, asOf), { scroll: false }));
  return <Steer value={{ query, pending, show }}>{children}</Steer>;
}

/** The cut on the page and how to change it; only inside `CutAddress`. */
export function useCut(): Steering {
  const steering = useContext(Steer);
  if (!steering) throw new Error("useCut is used outside CutAddress");
  return steering;
}
