import { useCallback, useMemo } from "react";
import { type InHandLayout, inHandLayouts } from "../../../core/answer/cut/cutting.ts";
import { turnedLayout } from "../../../core/answer/left-handed.ts";
import { printLength, printWithUnit, stepOf } from "../../../core/measure/index.ts";
import { layoutPicture } from "../../../core/picture/layout.ts";
import type { Picture } from "../../../core/picture/marks.ts";
import { PictureView } from "../PictureView.tsx";
import { Said } from "../said.tsx";
import { useSwatches } from "../useSwatches.ts";
import { useMedia } from "../useTheme.ts";
import { useView } from "../view.ts";
import type { BodyProps } from "./body.ts";

interface Props {
  readonly shown: BodyProps["shown"];
  readonly fabricId: string;
}

/** The maker's own pieces of one fabric, each kind of cutting drawn to the scale of its bolt. */
export function InHand({ shown, fabricId }: Props) {
  const { answer } = shown;
  const layouts = useMemo(() => {
    const cutting = answer.cutting.find((c) => c.fabricId === fabricId);
    const bolt = answer.layouts.find((l) => l.fabricId === fabricId);
    return cutting && bolt ? inHandLayouts(cutting, bolt) : [];
  }, [answer, fabricId]);
  if (layouts.length === 0) return null;
  return (
    <div className="in-hand">
      {layouts.map((one) => (
        <One key={`${one.sheet.id} ${one.turned} ${one.times}`} shown={shown} one={one} />
      ))}
    </div>
  );
}

function One({ shown, one }: { shown: Props["shown"]; one: InHandLayout }) {
  const { brief, answer } = shown;
  const swatches = useSwatches(brief);
  const leftHanded = useView((v) => v.leftHanded);
  const narrow = useMedia("(max-width: 719px)");
  const step = stepOf(brief.step, brief.unit);
  const make = useCallback(
    (small: number): Picture => {
      const say = (x: number): string => printLength(x, stepOf(brief.step, brief.unit));
      const { demands, pieces, recipes, unit } = answer;
      const { room, layout } = one;
      return layoutPicture(layout, {
        unit,
        demands,
        pieces,
        recipes,
        room,
        say,
        small,
        ...(leftHanded ? turnedLayout(answer, layout.fabricId) : {}),
      });
    },
    [brief, answer, one, leftHanded],
  );
  const size = `${printWithUnit(one.sheet.width, step)} by ${printWithUnit(one.sheet.length, step)}`;
  const from = one.times === 1 ? "One piece in hand" : `${one.times} pieces in hand, each`;
  const how = one.turned ? ", strips along its length" : "";
  return (
    <figure>
      <figcaption>
        <Said text={`${from} ${size}${how}`} />
      </figcaption>
      <PictureView
        make={make}
        swatches={swatches}
        small={narrow ? 14 : 17}
        most={answer.unit === "in" ? 22 : 22 / 25.4}
        label={`Cutting layout of ${from.toLowerCase()} ${size}, to scale`}
      />
    </figure>
  );
}
