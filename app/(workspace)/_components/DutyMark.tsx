import { type DutyMark as Duty, obligationWords } from "@/lib/view/obligation";
import { day } from "@/lib/view/time";

/** A safety or legal date as a letter in a double frame, beside whatever money says; its words are read out. */
export function DutyMark({ kind, title, dueOn }: Duty) {
  const { letter, name } = obligationWords(kind);
  const text = `${name} ${day(dueOn)}: ${title}`;
  return (
    <span
      role="img"
      aria-label={text}
      title={text}
      data-letter={letter}
      className="inline-block border-[3px] border-ink border-double px-[0.2em] text-center font-bold text-[0.75rem] text-ink leading-[1.1] after:content-[attr(data-letter)]"
    />
  );
}
