const LONGEST_FILE = 300;

interface Habit {
  readonly name: string;
  readonly sign: RegExp;
  /** Paths where it is right. */
  readonly except?: RegExp;
}

/** What is written nowhere, or only in few places. */
const HABITS: readonly Habit[] = [
  { name: "a silenced style rule", sign: /biome-ignore/ },
  { name: "a silenced type error", sign: /@ts-(ignore|expect-error|nocheck)/ },
  { name: "SQL put together from text", sign: /\$(query|execute)RawUnsafe|Prisma\.raw\(/ },
  {
    name: "the framework's link, whose words stay English",
    sign: /import Link from "next\/link"/,
    except: /^app\/_ui\/Anchor/,
  },
  { name: "a note of unfinished work", sign: /\b(TODO|FIXME)\b/ },
  { name: "a test that is left out or alone", sign: /\b(it|test|describe)\.(only|skip|todo|fixme)\b/ },
  { name: "a wait for no reason", sign: /waitForTimeout/ },
  {
    name: "the environment read outside its place",
    sign: /\bprocess\.env\b/,
    except: /^(lib\/env\.ts|instrumentation\.ts|lib\/launch\/|test\/|[a-z]+\.config\.ts)/,
  },
];

const DRAWER = /(^|\/)(utils?|helpers?|common|misc|types|constants)(\/|\.tsx?$)/;
const BARREL = /^(app|lib)\/(.*\/)?index\.tsx?$/;

/** What of our habits a file breaks. */
export function badHabits(path: string, text: string): string[] {
  const found = HABITS.filter(({ sign, except }) => sign.test(text) && !except?.test(path)).map(
    ({ name }) => name,
  );
  if (text.trimEnd().split("\n").length > LONGEST_FILE) found.push(`more than ${LONGEST_FILE} lines`);
  if (DRAWER.test(path)) found.push("a drawer for anything");
  if (BARREL.test(path)) found.push("a file that only passes on");
  return found.map((name) => `${path}: ${name}`);
}
