import { SetTable } from "@/app/(workspace)/assumptions/_components/SetTable";
import type { AssumptionEffects } from "@/lib/data/assumptionEffect";

interface EffectsProps {
  readonly effects: Promise<AssumptionEffects>;
  readonly mayChange: boolean;
}

/** The figures under each set, once they are computed. */
export async function Effects({ effects, mayChange }: EffectsProps) {
  return <SetTable effects={await effects} mayChange={mayChange} />;
}
