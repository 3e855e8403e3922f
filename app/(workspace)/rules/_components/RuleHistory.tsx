"use client";

import { UndoBar } from "@/app/_ui/UndoBar";
import { ChangeRule } from "@/app/(workspace)/rules/_components/ChangeRule";
import { useWritten } from "@/app/(workspace)/rules/_components/useWritten";
import { type RuleVersion, ruleSentence } from "@/lib/view/ruleTable";
import { day } from "@/lib/view/time";

interface RuleHistoryProps {
  readonly versions: readonly RuleVersion[];
  /** Newest version of each code. */
  readonly rules: readonly RuleVersion[];
  readonly mayChange: boolean;
}

const HEADS = ["Version", "What it said", "Source", "Written", "In force"];

/** Every version of every rule, newest first. */
export function RuleHistory({ versions, rules, mayChange }: RuleHistoryProps) {
  const { message, written, close } = useWritten();
  if (versions.length === 0) return <p>None yet.</p>;
  const newest = new Map(rules.map((rule) => [rule.code, rule.version]));
  return (
    <>
      <div className="overflow-x-auto">
        <table className="table">
          <caption className="sr-only">Versions of the rules</caption>
          <thead>
            <tr>
              {HEADS.map((head) => (
                <th key={head} scope="col">
                  {head}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {versions.map((rule) => (
              <tr key={`${rule.code} ${rule.version}`}>
                <th scope="row">
                  {rule.code}, version {rule.version}
                </th>
                <td>{ruleSentence(rule)}</td>
                <td>{rule.source}</td>
                <td>
                  {day(rule.changedOn)} by {rule.changedBy}
                </td>
                <td>
                  <InForce rule={rule} newest={newest.get(rule.code) ?? 0} {...{ mayChange, written }} />
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      <UndoBar message={message} onClose={close} />
    </>
  );
}

interface InForceProps {
  readonly rule: RuleVersion;
  readonly newest: number;
  readonly mayChange: boolean;
  readonly written: ReturnType<typeof useWritten>["written"];
}

function InForce({ rule, newest, mayChange, written }: InForceProps) {
  if (rule.version === newest) return rule.retired ? <span>retired</span> : <strong>in force</strong>;
  if (!mayChange) return <span>no</span>;
  const trigger = `Take up ${rule.code}, version ${rule.version}`;
  return <ChangeRule rule={rule} seen={newest} trigger={trigger} onWritten={written} />;
}
