import "server-only";
import { z } from "zod";
import type { Actor } from "@/lib/access/actor";
import { scopeOf } from "@/lib/access/policy";
import { database } from "@/lib/data/client";
import { visibleBatches } from "@/lib/data/intake/batch";
import { visibleSources } from "@/lib/data/intake/sourceReading";
import { sites } from "@/lib/data/scope";
import { foldText } from "@/lib/intake/foldText";
import { findField, isRegisterKey, REGISTERS } from "@/lib/intake/registers";
import type { DialectAnswers } from "@/lib/intake/settleDialect";
import { similarity } from "@/lib/intake/similarity";
import { suggestNames } from "@/lib/intake/suggestNames";
import {
  answerWords,
  type ListedSource,
  type OpenWord,
  type SourceDetail,
  type SourceName,
} from "@/lib/view/importSource";

const MOST_OPEN = 100;

const labelOf = (register: string) => (isRegisterKey(register) ? REGISTERS[register].label : register);

/** The systems the actor may bring files of, by name. */
export async function readSources(actor: Actor): Promise<ListedSource[]> {
  const rows = await database().importSource.findMany({
    where: visibleSources(actor),
    select: {
      ...{ id: true, name: true, site: { select: { code: true } } },
      readings: { select: { register: true }, distinct: ["register"] },
      _count: { select: { batches: true, words: true } },
    },
    orderBy: { name: "asc" },
  });
  return rows.map(({ site, readings, _count, ...source }) => ({
    ...source,
    siteCode: site?.code ?? null,
    registers: readings.map(({ register }) => labelOf(register)).sort(),
    ...{ files: _count.batches, words: _count.words },
  }));
}

/** Which system a staged file comes from, and those it may come from. */
export interface FileSource {
  readonly sourceId: string | null;
  readonly sources: readonly SourceName[];
  readonly sites: readonly { readonly id: string; readonly code: string }[];
  readonly everySite: boolean;
  /** Names of the file nothing on record is called, parts apart. */
  readonly openWords: number;
}

/** The source of a staged file; null when there is no such file for this actor. */
export async function readFileSource(actor: Actor, batchId: string): Promise<FileSource | null> {
  const batch = await database().importBatch.findFirst({
    where: { id: batchId, ...visibleBatches(actor) },
    select: { sourceId: true },
  });
  if (!batch) return null;
  const [sources, own, openWords] = await Promise.all([
    readSources(actor),
    database().site.findMany({
      where: sites(actor, "register:import"),
      select: { id: true, code: true },
      orderBy: { code: "asc" },
    }),
    database().unmatchedName.count({ where: { batchId, kind: { not: "part" } } }),
  ]);
  const everySite = scopeOf(actor.grants, "register:import") === "all";
  return { sourceId: batch.sourceId, sources, sites: own, everySite, openWords };
}

/** A system with how its files are read, what its words mean and which are open; null when the actor has none such. */
export async function readSource(actor: Actor, id: string): Promise<SourceDetail | null> {
  if (!z.uuid().safeParse(id).success) return null;
  const source = await database().importSource.findFirst({
    where: { id, ...visibleSources(actor) },
    include: {
      site: { select: { code: true } },
      readings: { orderBy: [{ register: "asc" }, { version: "desc" }] },
      words: { orderBy: [{ kind: "asc" }, { within: "asc" }, { written: "asc" }] },
      batches: {
        where: visibleBatches(actor),
        select: { id: true, fileName: true, state: true },
        orderBy: { createdAt: "desc" },
        take: 20,
      },
    },
  });
  if (!source) return null;
  return {
    ...{ id, name: source.name, siteCode: source.site?.code ?? null, files: source.batches },
    versions: source.readings.map(({ register, version, changedBy, changedAt, mapping, answers }) => ({
      ...{
        register,
        registerLabel: labelOf(register),
        version,
        changedBy,
        changedAt: changedAt.toISOString(),
      },
      columns: Object.entries(mapping as Record<string, string | null>).map(([header, field]) => ({
        header,
        field:
          field && isRegisterKey(register) ? (findField(REGISTERS[register], field)?.label ?? field) : field,
      })),
      answers: answerWords(answers as Record<string, unknown>),
      nullWords: (answers as DialectAnswers).nullWords ?? null,
    })),
    words: source.words.map(({ id: wordId, kind, within, written, meaning, decidedBy, decidedOn }) => ({
      ...{ id: wordId, kind, within, written, meaning, by: decidedBy },
      on: decidedOn.toISOString().slice(0, 10),
    })),
    open: await findOpenWords(actor, id, new Set(source.words.map((word) => markOf(word)))),
  };
}

const markOf = ({ kind, within, folded }: { kind: string; within: string; folded: string }) =>
  [kind, within, folded].join("\n");

/** Words of the source's files that nothing is called, with what they may mean. */
async function findOpenWords(
  actor: Actor,
  sourceId: string,
  taught: ReadonlySet<string>,
): Promise<OpenWord[]> {
  const rows = await database().unmatchedName.findMany({
    where: {
      kind: { not: "part" },
      batch: { sourceId, state: { in: ["staged", "committed"] }, ...visibleBatches(actor) },
    },
    orderBy: [{ rows: "desc" }, { id: "asc" }],
    take: 2000,
  });
  const groups = new Map<string, (typeof rows)[number]>();
  for (const row of rows) {
    const mark = markOf(row);
    const known = groups.get(mark);
    if (!taught.has(mark)) groups.set(mark, known ? { ...known, rows: known.rows + row.rows } : row);
  }
  const lines = await database().line.findMany({
    where: { site: sites(actor, "read") },
    select: { code: true, name: true, machines: { select: { code: true, name: true } } },
    orderBy: { code: "asc" },
  });
  return [...groups.values()].slice(0, MOST_OPEN).flatMap((row): OpenWord[] => {
    const { kind, within, written, detail } = row;
    if (kind === "part") return [];
    const word = { kind, within, written, rows: row.rows, detail };
    if (kind === "line") return [{ ...word, ...byNames(written, lines) }];
    if (kind === "machine")
      return [{ ...word, ...byNames(written, lines.find(({ code }) => code === within)?.machines ?? []) }];
    return [{ ...word, ...byValues({ within, written, detail }) }];
  });
}

function byNames(written: string, known: readonly { readonly code: string; readonly name: string }[]) {
  return {
    suggestions: suggestNames(written, known),
    choices: known.map(({ code, name }) => ({ value: code, label: `${code} ${name}` })),
  };
}

/** Values of a field of choices: the hint of a text, else the likeliest word. */
function byValues({ within, written, detail }: Pick<OpenWord, "within" | "written" | "detail">) {
  const fields = Object.values(REGISTERS).flatMap((register) => findField(register, within) ?? []);
  const choices = fields.find((field) => field.choices.length > 0)?.choices ?? [];
  const [hinted, language] = detail.split("\n");
  const likely = choices.map(({ value, synonyms, label }) => {
    const alike = Math.max(
      ...[label, ...synonyms].map((word) => similarity(foldText(word), foldText(written))),
    );
    const isHint = hinted === value;
    return {
      code: value,
      score: isHint ? 0.9 : alike * 0.8,
      why: isHint ? `a ${language} word for it` : "a like word",
    };
  });
  return {
    suggestions: likely
      .filter(({ score }) => score >= 0.4)
      .sort((a, b) => b.score - a.score)
      .slice(0, 3),
    choices: choices.map(({ value, label }) => ({ value, label })),
  };
}
