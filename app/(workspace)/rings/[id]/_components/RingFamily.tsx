"use client";

import { Dialog } from "@/app/_ui/Dialog";
import { EntryForm } from "@/app/_ui/EntryForm";
import { SelectField } from "@/app/_ui/field/SelectField";
import { Section } from "@/app/_ui/Section";
import { UndoBar } from "@/app/_ui/UndoBar";
import { useDone } from "@/app/(workspace)/_components/useDone";
import { saveNetworkPlate } from "@/app/(workspace)/rings/[id]/actions";
import { profileFamilyName } from "@/lib/retrofit/profileFamilies";
import { NOT_KNOWN } from "@/lib/view/number";
import { familyFindings, profileFamilyChoices } from "@/lib/view/profileFamily";
import type { RingSheet } from "@/lib/view/ring";

interface RingFamilyProps {
  readonly sheet: RingSheet;
  readonly mayEdit: boolean;
}

/** The communication profile family of a ring, and the drives that name another. */
export function RingFamily({
  sheet: { id: networkId, name, profileFamily, rows },
  mayEdit,
}: RingFamilyProps) {
  const { done, tell, undo, close } = useDone();
  const seen = { profileFamily };
  const findings = familyFindings(
    profileFamily,
    rows.map(({ label, driveFamily }) => ({ label, drive: driveFamily })),
  );
  return (
    <Section
      title="Communication profile family"
      lead="Number after IEC 61784. Nodes of one network speak one family."
    >
      <p>{profileFamily === null ? NOT_KNOWN : profileFamilyName(profileFamily)}</p>
      <ul className="measure list-disc pl-5">
        {findings.map((finding) => (
          <li key={finding}>{finding}</li>
        ))}
      </ul>
      {mayEdit ? (
        <div className="no-print mt-3">
          <Dialog trigger="Change the family" title={`Communication profile family of ${name}`}>
            {(closeDialog) => (
              <EntryForm
                submit="Save the family"
                save={async (text) => {
                  const number = text("profileFamily");
                  const wanted = { profileFamily: number === "" ? null : Number(number) };
                  const answer = await saveNetworkPlate({ networkId, seen, wanted });
                  return answer.ok ? { ok: true, value: wanted } : answer;
                }}
                onSaved={(wanted: typeof seen) => {
                  closeDialog();
                  tell({
                    message: `The family of ${name} is written down.`,
                    undo: () => saveNetworkPlate({ networkId, seen: wanted, wanted: seen }),
                  });
                }}
              >
                {(errorOf) => (
                  <SelectField
                    {...{ name: "profileFamily", label: "Communication profile family", empty: "not known" }}
                    choices={profileFamilyChoices}
                    defaultValue={profileFamily ?? ""}
                    error={errorOf("profileFamily")}
                  />
                )}
              </EntryForm>
            )}
          </Dialog>
        </div>
      ) : null}
      <UndoBar message={done?.message ?? null} {...(done?.undo ? { onUndo: undo } : {})} onClose={close} />
    </Section>
  );
}
