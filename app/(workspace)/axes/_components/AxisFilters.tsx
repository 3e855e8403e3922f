"use client";

import { usePathname, useRouter, useSearchParams } from "next/navigation";
import { type FormEvent, useTransition } from "react";
import { Button } from "@/app/_ui/Button";
import { type AxisFilter, NO_PANEL } from "@/lib/view/axisList";
import { evidenceView } from "@/lib/view/evidence";
import { networkKindName, networkKinds } from "@/lib/view/machine";
import { count } from "@/lib/view/number";

type Choice = readonly [value: string, words: string];

interface AxisFiltersProps {
  readonly filter: AxisFilter;
  readonly choices: {
    readonly sites: readonly { readonly code: string; readonly lines: readonly string[] }[];
    readonly families: readonly string[];
    readonly panels: readonly string[];
  };
  readonly total: number;
}

const named = (words: readonly string[]): Choice[] => words.map((word) => [word, word]);

const NETWORKS: readonly Choice[] = [
  ...networkKinds.map((kind): Choice => [kind, networkKindName(kind)]),
  ["none", "not recorded"],
];
const EVIDENCES = (["measured", "documented", "inferred", "assumed"] as const).map(
  (evidence): Choice => [evidence, evidenceView(evidence).text],
);

/** Narrows the list of axes; the choice stands in the address. */
export function AxisFilters({ filter, choices, total }: AxisFiltersProps) {
  const router = useRouter();
  const pathname = usePathname();
  const params = useSearchParams();
  const [pending, start] = useTransition();
  const choose = (changes: Readonly<Record<string, string>>) => {
    const next = new URLSearchParams(params);
    for (const [name, value] of Object.entries(changes)) {
      if (value === "") next.delete(name);
      else next.set(name, value);
    }
    start(() => router.replace(`${pathname}?${next}`, { scroll: false }));
  };
  const search = (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    choose({ q: String(new FormData(event.currentTarget).get("q")).trim() });
  };
  const lines = choices.sites.filter(({ code }) => filter.site === null || code === filter.site);
  const chosen = { q: "", site: "", line: "", family: "", network: "", panel: "", evidence: "" };
  return (
    <div className="no-print mb-2 flex flex-wrap items-center gap-2">
      <form onSubmit={search}>
        <input
          key={filter.text}
          name="q"
          type="search"
          aria-label="Filter axes"
          data-table-filter=""
          className="input w-60 max-sm:w-full"
          placeholder="Line, machine, axis, feedback"
          defaultValue={filter.text}
        />
      </form>
      <Choose
        label="Site"
        value={filter.site}
        choices={named(choices.sites.map(({ code }) => code))}
        onChange={(site) => choose({ site, line: "" })}
      />
      <Choose
        label="Line"
        value={filter.line}
        choices={named(lines.flatMap((site) => site.lines))}
        onChange={(line) => choose({ line })}
      />
      <Choose
        label="Drive family"
        value={filter.family}
        choices={named(choices.families)}
        onChange={(family) => choose({ family })}
      />
      <Choose
        label="Network"
        value={filter.network}
        choices={NETWORKS}
        onChange={(network) => choose({ network })}
      />
      <Choose
        label="Panel"
        value={filter.panel}
        choices={[...named(choices.panels), [NO_PANEL, NO_PANEL]]}
        onChange={(panel) => choose({ panel })}
      />
      <Choose
        label="Evidence"
        value={filter.evidence}
        choices={EVIDENCES}
        onChange={(evidence) => choose({ evidence })}
      />
      {Object.keys(chosen).some((name) => params.has(name)) ? (
        <Button kind="quiet" onClick={() => choose(chosen)}>
          Clear filters
        </Button>
      ) : null}
      <p role="status" className="text-ink-2 text-sm">
        {pending ? "Looking…" : count(total, "axis", "axes")}
      </p>
    </div>
  );
}

interface ChooseProps {
  readonly label: string;
  readonly value: string | null;
  readonly choices: readonly Choice[];
  readonly onChange: (value: string) => void;
}

function Choose({ label, value, choices, onChange }: ChooseProps) {
  return (
    <select
      aria-label={`Show only ${label}`}
      className="input w-auto max-w-52"
      value={value ?? ""}
      onChange={(event) => onChange(event.target.value)}
    >
      <option value="">{`${label}: all`}</option>
      {choices.map(([choice, words]) => (
        <option key={choice} value={choice}>
          {words}
        </option>
      ))}
    </select>
  );
}
