import "server-only";
import type { Actor } from "@/lib/access/actor";
import { database } from "@/lib/data/client";
import { readLineFacts } from "@/lib/data/lineCompatibility";
import { readRulesInForce } from "@/lib/data/rules";
import { atSites } from "@/lib/data/scope";
import type { IsoDate } from "@/lib/kernel/isoDate";
import type { ControllerFacts, RuleOf } from "@/lib/retrofit/compatibility/facts";
import { firmwareWord, meetsLevel, parseFirmwareLevel } from "@/lib/retrofit/firmwareLevel";
import type { LastBatchRow } from "@/lib/view/buyDocument";

/**
 * Machines with drives of a family whose controller would not run the newest hardware of it, or may not, by the rules
 * in force; at the actor's sites.
 */
export async function readLastBatch(
  actor: Actor,
  { family, asOf }: { readonly family: string; readonly asOf: IsoDate },
): Promise<LastBatchRow[]> {
  const rules = (await readRulesInForce(actor)).filter(
    (rule): rule is RuleOf<"hardware_revision"> =>
      rule.kind === "hardware_revision" && rule.terms.family === family,
  );
  if (rules.length === 0) return [];
  const [lines, machines] = await Promise.all([readLineFacts(actor, { asOf }), readMachines(actor)]);
  return rules.flatMap((rule) =>
    lines.flatMap(({ code, controllers }) =>
      controllers
        .filter(({ groups }) => groups.some(({ drive }) => drive === family))
        .flatMap((controller): LastBatchRow[] => {
          const verdict = runs(controller, rule);
          if (verdict === "yes") return [];
          return [
            {
              ...{ line: code, machines: machines.get(`${code} ${controller.designation}`) ?? [] },
              ...{ controller: controller.designation, model: controller.model },
              level: firmwareWord(controller.level),
              fails: verdict === "no",
              rule: `${rule.code}: ${family} from hardware ${rule.terms.revision} on`,
            },
          ];
        }),
    ),
  );
}

function runs({ model, level }: ControllerFacts, { terms }: RuleOf<"hardware_revision">) {
  const accepted = terms.controllers.find((one) => one.model === model);
  if (!accepted) return "no";
  return accepted.level === null ? "yes" : meetsLevel(level, parseFirmwareLevel(accepted.level));
}

/** Codes of the machines a controller runs on a line, by both. */
async function readMachines(actor: Actor): Promise<Map<string, string[]>> {
  const rows = await database().machine.findMany({
    where: { line: atSites(actor, "read"), controllerId: { not: null } },
    select: { code: true, line: { select: { code: true } }, controller: { select: { designation: true } } },
    orderBy: { code: "asc" },
  });
  const found = new Map<string, string[]>();
  for (const { code, line, controller } of rows) {
    const key = `${line.code} ${controller?.designation ?? ""}`;
    found.set(key, [...(found.get(key) ?? []), code]);
  }
  return found;
}
