import { AsOfLink } from "@/app/_ui/AsOfLink";
import { Button } from "@/app/_ui/Button";
import { Dialog } from "@/app/_ui/Dialog";
import { TextField } from "@/app/_ui/field/TextField";
import { ActionForm } from "@/app/(workspace)/review/_components/ActionForm";
import type { Settled } from "@/app/(workspace)/review/_components/ActionSection";
import type { Desk } from "@/app/(workspace)/review/_components/desk";
import { aboutAction, actionStateWords, isLate, type ReviewAction } from "@/lib/view/reviewRecord";
import { day, distance } from "@/lib/view/time";

interface ActionRowProps {
  readonly action: ReviewAction;
  readonly desk: Desk;
  readonly settle: (action: ReviewAction, to: Settled) => void;
}

/** One action with what can be done about it. */
export function ActionRow({ action, desk, settle }: ActionRowProps) {
  const { text, owner, dueOn, reason, state } = action;
  const about = aboutAction(action, desk.site.code);
  const words = actionStateWords(action, desk.asOf);
  return (
    <tr>
      <th scope="row">{text}</th>
      <td>
        {about.href === null ? (
          // Leads nowhere, and yet the walk along the rows must not pass it by.
          <span tabIndex={-1} data-row-link="">
            {about.text}
          </span>
        ) : (
          <AsOfLink href={about.href} data-row-link="">
            {about.text}
          </AsOfLink>
        )}
      </td>
      <td>{owner.name}</td>
      <td className="whitespace-nowrap">
        {day(dueOn)}
        {state === "open" ? (
          <span className="block text-ink-2 text-sm">{distance(dueOn, desk.asOf)}</span>
        ) : null}
      </td>
      <td>
        {isLate(action, desk.asOf) ? <strong>{words}</strong> : words}
        {reason === null ? null : <span className="block text-ink-2 text-sm">{reason}</span>}
      </td>
      <td className="no-print">{desk.mayAct ? <Changes {...{ action, desk, settle }} /> : null}</td>
    </tr>
  );
}

function Changes({ action, desk, settle }: ActionRowProps) {
  if (action.state !== "open")
    return <Button onClick={() => settle(action, { state: "open", reason: null })}>Open again</Button>;
  const about = { partId: action.part?.id ?? null, lineId: action.line?.id ?? null, text: action.text };
  return (
    <div className="flex flex-wrap gap-2">
      <Button onClick={() => settle(action, { state: "done", reason: null })}>Done</Button>
      <Dialog trigger="Change" title="Change the action">
        {(close) => <ActionForm {...{ desk, about, action }} onDone={close} />}
      </Dialog>
      <Dialog trigger="Drop" title="Drop the action">
        {(close) => (
          <form
            className="grid gap-4"
            onSubmit={(event) => {
              event.preventDefault();
              const reason = String(new FormData(event.currentTarget).get("reason") ?? "").trim();
              if (reason === "") return;
              close();
              settle(action, { state: "dropped", reason });
            }}
          >
            <TextField name="reason" label="Why it is dropped" required maxLength={300} />
            <div>
              <Button type="submit" kind="primary">
                Drop it
              </Button>
            </div>
          </form>
        )}
      </Dialog>
    </div>
  );
}
