import { AppShell } from "@/app/_ui/AppShell";
import { Breadcrumbs } from "@/app/_ui/Breadcrumbs";
import { Button } from "@/app/_ui/Button";
import { Caution } from "@/app/_ui/Caution";
import { Delta } from "@/app/_ui/Delta";
import { Derivation } from "@/app/_ui/Derivation";
import { EmptyState } from "@/app/_ui/EmptyState";
import { EvidenceMark } from "@/app/_ui/EvidenceMark";
import { FormMessage } from "@/app/_ui/FormMessage";
import { KeyFigure } from "@/app/_ui/KeyFigure";
import { KeyFigures } from "@/app/_ui/KeyFigures";
import { Legend } from "@/app/_ui/Legend";
import { LinkButton } from "@/app/_ui/LinkButton";
import { Notice } from "@/app/_ui/Notice";
import { PageHeader } from "@/app/_ui/PageHeader";
import { Section } from "@/app/_ui/Section";
import { StageBadge } from "@/app/_ui/StageBadge";
import { StaleMark } from "@/app/_ui/StaleMark";
import { Tabs } from "@/app/_ui/Tabs";
import { LineSpanChart } from "@/app/_ui/chart/LineSpanChart";
import { CheckboxField } from "@/app/_ui/field/CheckboxField";
import { DateField } from "@/app/_ui/field/DateField";
import { FileField } from "@/app/_ui/field/FileField";
import { NumberField } from "@/app/_ui/field/NumberField";
import { SelectField } from "@/app/_ui/field/SelectField";
import { TextField } from "@/app/_ui/field/TextField";
import { TextareaField } from "@/app/_ui/field/TextareaField";
import { readTheme } from "@/app/_ui/theme/readTheme";
import { SUPPLY_STAGES } from "@/lib/lifecycle/supplyStage";
import { chance } from "@/lib/view/chance";
import { money, moneyRange } from "@/lib/view/format";
import { noSpareSeries } from "@/lib/view/noSpareSeries";
import { stageBadge } from "@/lib/view/stage";
import { type R, ScratchTable } from "./ScratchTable";
import { ScratchDialog } from "./ScratchDialog";

const names = ["Carton A", "Carton B", "Carton C", "Flow wrap", "Tissue fold", "Tray pack", "Sachet", "Case pack", "Label"];
function make(n: number): R[] {
  return Array.from({ length: n }, (_, i) => {
    const mean = 900000 / (1 + i * 0.35);
    return { code: `${["VEL", "OST", "KAR", "PIN"][i % 4]}-${String(i + 1).padStart(2, "0")}`, name: names[i % 9] ?? "", site: ["Velmark", "Ostrowka Mała", "Karlsvik", "Pinehollow"][i % 4] ?? "", stage: SUPPLY_STAGES[(i * 3 + 5) % 8], loss: i === 6 ? null : { mean, low: mean * 0.45, high: mean * 1.5 }, base: mean * 0.4, short: mean * 0.5, date: i % 5 === 3 ? null : "2027-0" + ((i % 8) + 1) + "-14", ev: ["measured", "documented", "inferred", "assumed"][i % 4], score: 50 - (i % 50) };
  });
}
export default async function Page({ searchParams }: { searchParams: Promise<Record<string, string>> }) {
  const { n = "18" } = await searchParams;
  const months = Array.from({ length: 61 }, (_, i) => { const m = 1 - Math.exp(-((i / 34) ** 2.4)); return { mean: m, low: m * 0.7, high: Math.min(1, m * 1.25 + 0.01) }; });
  return (
    <AppShell today="2026-11-30" theme={await readTheme()} scope="All 6 sites" user={{ name: "Demo Planner", role: "Planner, all sites" }} account={<Button>Sign out</Button>}
      items={[["Lines", "/scratch"], ["Parts", "/parts"], ["Spares", "/spares"], ["Plans", "/plans"], ["Projects", "/projects"], ["Report", "/report"], ["Import", "/import"]].map(([label = "", href = ""]) => ({ label, href }))}>
      <PageHeader title="Carton C, VEL-03" asOf="2026-11-30" above={<Breadcrumbs crumbs={[{ label: "Lines", href: "/lines" }, { label: "Velmark", href: "/lines?site=VEL" }]} />} lead={<>Stops are expected to cost <strong>€ 412 k a year</strong> (180–790 k); most of it because the shelf for one drive family is empty by autumn 2027.</>} actions={<><ScratchDialog /><LinkButton href="/x" kind="primary">Plan a retrofit</LinkButton></>} />
      <KeyFigures>
        <KeyFigure label="Stop loss" value={money(412000)} unit="a year" span={moneyRange({ mean: 412000, low: 180000, high: 790000 })} evidence={<EvidenceMark grade="m" text="measured" />} date="12 months to 30 Nov 2026" href="/x" />
        <KeyFigure label="No usable spare" value="37 %" span={chance(0.37, "failures").slice(5)} evidence={<EvidenceMark grade="i" text="inferred" />} href="/x" />
        <KeyFigure label="Shelf empty" value="Sep 2027" span="4 in 5 chance, Oak 020" evidence={<EvidenceMark grade="i" text="inferred" />} date="10 months ahead" />
        <KeyFigure label="Cost of an hour" value="€ 3 400" unit="an hour" assumed evidence={<EvidenceMark grade="a" text="assumed" />}><Delta kind="worse" text="€ 300 more than last year" /></KeyFigure>
      </KeyFigures>
      <Tabs label="Parts of the dossier" tabs={[{ label: "What drives it", href: "/scratch", current: true }, { label: "Machines", href: "/scratch?x=1", current: false, count: 7 }, { label: "Controllers", href: "/scratch?x=2", current: false }, { label: "Events", href: "/scratch?x=3", current: false, count: 31 }]} />
      <Section title="Lines by stop loss" lead="The worst 5 of 40 lines carry 61 % of the loss."><ScratchTable id="lines" rows={make(Number(n))} /><div className="mt-2"><Legend items={[{ label: "Base part, with spares", look: "solid" }, { label: "Shortage part, without", look: "hatch" }]} /></div></Section>
      <Section title="Supply stages"><div className="flex flex-wrap gap-x-6 gap-y-2">{SUPPLY_STAGES.map((s) => <StageBadge key={s} {...stageBadge(s)} />)}</div>
        <p className="mt-3">List price € 2 250 <StaleMark text="source last read 14 Jan 2024" /> <EvidenceMark grade="d" text="documented" long /> <EvidenceMark grade="a" text="assumed" long /> · <Delta kind="better" text="€ 40 k less than last month" /> · <Delta kind="same" text="rank 3 as before" /></p></Section>
      <Section title="When the shelf runs empty"><LineSpanChart chart={noSpareSeries({ noSpareByMonth: months, depletionP50: "2029-02-11", depletionP80: "2030-01-11" }, "2026-11-30")} />
        <Derivation open title="How the stop loss is worked out" steps={[{ label: "Failures a year", formula: "0.050 × 48 units", value: "2.4", unit: "a year", source: <EvidenceMark grade="m" text="measured" long /> }, { label: "Cost of one stop without a spare", formula: "€ 3 400 × (46 h − 0.5 h) × 0.8", value: "€ 124 k", source: "cost per hour approved 12 Jan 2026" }, { label: "Stop loss", formula: "sum", value: "€ 412 k", unit: "a year" }]}>A common cause counts once.</Derivation></Section>
      <Section title="Messages"><Notice kind="info" title="Nine lines share these drives">A spare used at Velmark is missing at Karlsvik.</Notice><Notice kind="caution">Orders must leave by 28 Feb 2027 to arrive before the last ship date.</Notice><Notice kind="problem" title="41 of 430 rows cannot be used">The column “Serial” is empty in them.</Notice><Caution title="Stored energy on the bus: wait, then measure"><p>Lock out and tag. Only a person authorised for electrical work opens the cabinet; measure below 60 V before touching.</p></Caution><EmptyState title="No plans yet" actions={<LinkButton href="/plans">Compare options</LinkButton>}>Choose lines in the ranking and compare what their retrofit would cost.</EmptyState></Section>
      <Section title="A form"><form className="grid max-w-3xl gap-5 sm:grid-cols-2"><TextField label="Designation" name="d" required defaultValue="=VEL03+M4-U12" hint="As on the cabinet door." /><NumberField label="Cost of an hour" unit="EUR/h" name="c" error="Must be above zero." defaultValue={-4} required /><DateField label="Valid until" name="v" /><SelectField label="Reason" name="r" required empty="Choose a reason" choices={[{ value: "a", label: "Wrong revision" }]} /><TextareaField label="Remark" name="t" /><FileField label="Register" name="f" hint="CSV or workbook, up to 50 MB." required /><CheckboxField label="Reserve for the project" name="k" /><div className="sm:col-span-2"><FormMessage kind="problem">The plan changed since you opened it.</FormMessage></div><div className="flex gap-2"><Button kind="primary" type="submit">Save</Button><Button>Cancel</Button><Button kind="danger">Scrap 3 pieces</Button><Button disabled>Not now</Button></div></form></Section>
    </AppShell>
  );
}
