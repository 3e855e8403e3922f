"use client";

import { EvidenceMark } from "@/app/_ui/EvidenceMark";
import { UndoBar } from "@/app/_ui/UndoBar";
import { ChangeRule } from "@/app/(workspace)/rules/_components/ChangeRule";
import { NewRule } from "@/app/(workspace)/rules/_components/NewRule";
import { useWritten } from "@/app/(workspace)/rules/_components/useWritten";
import { evidenceMark } from "@/lib/view/evidence";
import { RULE_KIND_NAMES, type RuleVersion, ruleSentence } from "@/lib/view/ruleTable";
import { day } from "@/lib/view/time";

interface RuleListProps {
  readonly rules: readonly RuleVersion[];
  readonly mayChange: boolean;
}

/** The rules in force, and those retired. */
export function RuleList({ rules, mayChange }: RuleListProps) {
  const { message, written, close } = useWritten();
  return (
    <>
      {rules.length === 0 ? (
        <p>No rule is written down yet.</p>
      ) : (
        <div className="overflow-x-auto">
          <table className="table">
            <caption className="sr-only">Compatibility rules in force</caption>
            <thead>
              <tr>
                <th scope="col">Rule</th>
                <th scope="col">What it says</th>
                <th scope="col">Source</th>
                <th scope="col">Written</th>
                {mayChange ? <th scope="col">Change</th> : null}
              </tr>
            </thead>
            <tbody>
              {rules.map((rule) => (
                <tr key={rule.code}>
                  <th scope="row">
                    {rule.code}, version {rule.version}
                    <span className="block font-normal text-ink-2 text-sm">
                      {RULE_KIND_NAMES[rule.kind]}
                      {rule.retired ? ", retired" : ""}
                    </span>
                  </th>
                  <td>
                    {ruleSentence(rule)}
                    <span className="block text-ink-2 text-sm">{rule.note}</span>
                  </td>
                  <td>
                    {rule.source} <EvidenceMark {...evidenceMark(rule.evidence)} />
                  </td>
                  <td>
                    {day(rule.changedOn)} by {rule.changedBy}
                  </td>
                  {mayChange ? (
                    <td>
                      <ChangeRule rule={rule} seen={rule.version} onWritten={written} />
                    </td>
                  ) : null}
                </tr>
              ))}
            </tbody>
          </table>
        </div>
      )}
      {mayChange ? <NewRule onWritten={written} /> : null}
      <UndoBar message={message} onClose={close} />
    </>
  );
}
