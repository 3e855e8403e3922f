import { formWords, type IssueMark, issueTitle } from "@/lib/view/reportArchive";

/** A report in each form it was given out in, to save. */
export function IssueFiles({ issue }: { readonly issue: IssueMark }) {
  return (
    <ul aria-label={`Files of the ${issueTitle(issue)}`} className="flex flex-wrap gap-x-4 gap-y-1">
      {issue.files.map(({ form, bytes }) => (
        <li key={form} className="whitespace-nowrap">
          <a href={`/api/report/${issue.id}?as=${form}`} download>
            {formWords(form).name}
          </a>{" "}
          <span className="text-ink-2 text-sm">{Math.max(1, Math.round(bytes / 1024))} KiB</span>
        </li>
      ))}
    </ul>
  );
}
