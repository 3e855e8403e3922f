interface ContentsProps {
  readonly parts: readonly { readonly id: string; readonly title: string }[];
}

/** The parts of a long page in one row of links. */
export function Contents({ parts }: ContentsProps) {
  return (
    <nav aria-label="On this page" className="no-print mb-4 border-rule-2 border-y py-1 text-sm">
      <ul className="flex flex-wrap gap-x-5">
        {parts.map(({ id, title }) => (
          <li key={id}>
            <a href={`#${id}`} className="inline-block py-1">
              {title}
            </a>
          </li>
        ))}
      </ul>
    </nav>
  );
}
