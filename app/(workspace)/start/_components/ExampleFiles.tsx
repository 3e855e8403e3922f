import { EXAMPLE_FILES } from "@/lib/view/firstSteps";

/** The demonstration's files to save and to load, in their order. */
export function ExampleFiles() {
  return (
    <ol className="grid list-decimal gap-1 pl-6">
      {Object.entries(EXAMPLE_FILES).map(([name, holds]) => (
        <li key={name}>
          <a
            href={`/api/example/${name}`}
            download
            className="inline-flex min-h-8 items-center max-sm:min-h-11"
          >
            {name}
          </a>{" "}
          <span className="text-ink-2">{holds}</span>
        </li>
      ))}
    </ol>
  );
}
