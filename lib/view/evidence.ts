import type { Evidence } from "@/lib/risk/evaluation";

/** What the screen shows of how well a value is known. */
export interface EvidenceView {
  readonly grade: "m" | "d" | "i" | "a";
  readonly text: string;
  readonly sentence: string;
}

const VIEWS = {
  measured: { grade: "m", text: "measured", sentence: "Counted or measured on the group's own equipment." },
  documented: { grade: "d", text: "documented", sentence: "Taken from a document somebody can open." },
  inferred: { grade: "i", text: "inferred", sentence: "Worked out from other values that are known." },
  assumed: { grade: "a", text: "assumed", sentence: "Nothing is recorded; a stated default stands in." },
} as const satisfies Record<Evidence, EvidenceView>;

/** Letter and words for how well a value is known. */
export function evidenceView(evidence: Evidence): EvidenceView {
  return VIEWS[evidence];
}

/** What the evidence mark needs, to spread into it. */
export function evidenceMark(evidence: Evidence): Pick<EvidenceView, "grade" | "text"> {
  const { grade, text } = VIEWS[evidence];
  return { grade, text };
}

/** The grades as choices of a form, best known first, each with what it means. */
export const evidenceChoices = (Object.keys(VIEWS) as Evidence[]).map((value) => ({
  value,
  label: `${VIEWS[value].text}: ${VIEWS[value].sentence}`,
}));
