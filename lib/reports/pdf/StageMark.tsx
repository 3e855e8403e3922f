import { Circle, Path, Svg, Text } from "@react-pdf/renderer";
import type { SupplyStage } from "@/lib/lifecycle/supplyStage";
import { INK, STAGE_FILLS, STAGE_LINE } from "@/lib/reports/pdf/looks";
import { PAPER_FONTS } from "@/lib/reports/pdf/paperFonts";
import { stageView } from "@/lib/view/stage";
import { stageFill } from "@/lib/view/stageFill";

const RADIUS = 4.2;
const CENTRE = 5;

/** A supply stage as a circle that fills from A to F, with its letter inside; dashed where it is undated. */
export function StageMark({ stage }: { readonly stage: SupplyStage }) {
  const { letter, step } = stageView(stage);
  const isDark = step !== null && step >= 4;
  return (
    <Svg viewBox="0 0 10 10" style={{ width: 10, height: 10, marginRight: 2 }}>
      {step === null || step === 0 ? null : step === 5 ? (
        <Circle cx={CENTRE} cy={CENTRE} r={RADIUS} fill={STAGE_FILLS[5]} />
      ) : (
        <Path d={stageFill(step, { centre: CENTRE, radius: RADIUS })} fill={STAGE_FILLS[step]} />
      )}
      <Circle
        cx={CENTRE}
        cy={CENTRE}
        r={RADIUS}
        fill="none"
        stroke={STAGE_LINE}
        strokeWidth={0.6}
        {...(step === null ? { strokeDasharray: "1.2 1" } : {})}
      />
      <Text
        x={CENTRE}
        y={CENTRE + 1.9}
        textAnchor="middle"
        fill={isDark ? "#ffffff" : INK}
        style={{ fontFamily: PAPER_FONTS, fontSize: letter.length > 1 ? 4.4 : 5.4, fontWeight: 600 }}
      >
        {letter}
      </Text>
    </Svg>
  );
}
