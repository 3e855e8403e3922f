import type { RefObject } from "react";
import { FileField } from "@/app/_ui/field/FileField";
import { TextareaField } from "@/app/_ui/field/TextareaField";
import { SubmitButton } from "@/app/_ui/SubmitButton";

interface SourceFieldsProps {
  readonly form: RefObject<HTMLFormElement | null>;
  readonly onRead: () => void;
  readonly pending: boolean;
  readonly problems: Readonly<Record<string, string>>;
}

/** Where the text of a notice is pasted or its file chosen; it is kept with the notice. */
export function SourceFields({ form, onRead, pending, problems }: SourceFieldsProps) {
  return (
    <form
      ref={form}
      noValidate
      className="grid max-w-4xl gap-4"
      onSubmit={(event) => {
        event.preventDefault();
        onRead();
      }}
    >
      <TextareaField
        label="Text of the notice"
        name="text"
        rows={6}
        hint="Copy it out of the letter, the mail or the PDF. English and German words are understood."
        error={problems.text}
      />
      <FileField
        label="Or its file"
        name="file"
        accept=".txt,.csv,.xlsx"
        hint="A table or text: .txt, .csv or .xlsx. A file goes before pasted text."
        error={problems.file}
      />
      <div>
        <SubmitButton kind="plain" pending={pending} pendingText="Reading…">
          Read it
        </SubmitButton>
        <span className="ml-3 text-ink-2 text-sm">Fills what is still empty below.</span>
      </div>
    </form>
  );
}
