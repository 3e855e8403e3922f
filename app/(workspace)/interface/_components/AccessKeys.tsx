"use client";

import { useState } from "react";
import { Dialog } from "@/app/_ui/Dialog";
import { EmptyState } from "@/app/_ui/EmptyState";
import { FormMessage } from "@/app/_ui/FormMessage";
import { RowTable } from "@/app/_ui/RowTable";
import { KeyForm } from "@/app/(workspace)/interface/_components/KeyForm";
import { PressOnce } from "@/app/(workspace)/interface/_components/PressOnce";
import { SecretOnce } from "@/app/(workspace)/interface/_components/SecretOnce";
import { revokeAccessKey } from "@/app/(workspace)/interface/actions";
import type { AccessKeyRow } from "@/lib/data/accessKeys";
import type { SiteName } from "@/lib/data/siteNames";
import { type KeyDeed, keyPlaces, keyWords } from "@/lib/view/accessKey";
import { day, moment } from "@/lib/view/time";

interface AccessKeysProps {
  readonly keys: readonly AccessKeyRow[];
  readonly sites: readonly SiteName[];
  /** What the person may let a key do. */
  readonly deeds: readonly KeyDeed[];
}

const HEADS = ["Key", "May", "Where", "Person", "Last used", "Holds until", { text: "Change", print: false }];

/** The keys one sees, and the making and revoking of them. */
export function AccessKeys({ keys, sites, deeds }: AccessKeysProps) {
  const [made, setMade] = useState<{ readonly token: string; readonly name: string } | null>(null);
  const [problem, setProblem] = useState<string | null>(null);
  const make = (
    <Dialog trigger="Make a key" kind="primary" title="Make an access key">
      {(close) => (
        <KeyForm
          {...{ sites, deeds }}
          onMade={(key) => {
            close();
            setMade(key);
          }}
        />
      )}
    </Dialog>
  );
  return (
    <>
      <SecretOnce what={made && `The key "${made.name}"`} secret={made?.token ?? null} />
      <FormMessage kind="problem">{problem}</FormMessage>
      {keys.length === 0 ? (
        <EmptyState title="No key yet" actions={make}>
          Make one for each system, so that each can be revoked alone and the records say which one wrote.
        </EmptyState>
      ) : (
        <>
          <div className="no-print my-3">{make}</div>
          <RowTable caption="Access keys" heads={HEADS}>
            {keys.map((key) => (
              <KeyRow key={key.id} row={key} sites={sites} onAnswer={setProblem} />
            ))}
          </RowTable>
        </>
      )}
    </>
  );
}

interface KeyRowProps {
  readonly row: AccessKeyRow;
  readonly sites: readonly SiteName[];
  readonly onAnswer: (problem: string | null) => void;
}

function KeyRow({ row, sites, onAnswer }: KeyRowProps) {
  const codes = new Map(sites.map(({ id, code }) => [id, code]));
  const until = day(row.expiresAt.slice(0, 10));
  return (
    <tr>
      <td>
        {row.name} <span className="text-ink-2">…{row.ending}</span>
      </td>
      <td>{keyWords(row.deeds)}</td>
      <td>{keyPlaces(row.siteIds, codes)}</td>
      <td>{row.isOwn ? "You" : row.person}</td>
      <td>{row.lastUsedAt === null ? "Never" : `${moment(row.lastUsedAt, "UTC")} UTC`}</td>
      <td>{row.state === "good" ? until : `${until}, ${row.state}`}</td>
      <td className="no-print">
        {row.state === "good" ? (
          <PressOnce
            text="Revoke"
            label={`Revoke the key ${row.name}`}
            kind="danger"
            run={() => revokeAccessKey({ keyId: row.id })}
            onAnswer={onAnswer}
          />
        ) : null}
      </td>
    </tr>
  );
}
