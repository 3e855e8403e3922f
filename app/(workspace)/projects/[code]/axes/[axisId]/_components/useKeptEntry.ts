"use client";

import { useCallback } from "react";
import type { Draft } from "@/app/_ui/draft/keptDraft";
import { useKeptDraft } from "@/app/_ui/draft/useKeptDraft";
import { setThisAxisEntry } from "@/app/(workspace)/projects/[code]/axes/actions";
import type { TypedEntry } from "@/lib/schema/axisRecord";

interface EntryPlace {
  readonly projectId: string;
  readonly axisId: string;
  readonly checkId: string;
}

/** One check as typed, sent when its form is left and sent again until the server has it. */
export function useKeptEntry({ projectId, axisId, checkId }: EntryPlace, stored: Draft<TypedEntry>) {
  const write = useCallback(
    (draft: Draft<TypedEntry>) => setThisAxisEntry({ projectId, axisId, checkId, ...draft }),
    [projectId, axisId, checkId],
  );
  return useKeptDraft({ name: `ebbline axis record ${projectId} ${axisId} ${checkId}`, stored, write });
}
