import { type DragEvent, useId, useState } from "react";
import { lengthTextProblem, stepOfBrief } from "../../../core/answer/words/word.ts";
import { angleToLevel, scaleFromTaps, type Tap } from "../../../core/fabric/index.ts";
import { say } from "../../../core/findings/index.ts";
import { knownLength } from "../../../core/measure/index.ts";
import type { Answered } from "../answers.ts";
import type { Box, Opened } from "./messages.ts";
import { Shaping } from "./Shaping.tsx";
import { Taking } from "./Taking.tsx";
import { usePhoto } from "./usePhoto.ts";
import "./photo.css";

const whole = ({ width, height }: Opened): Box => ({
  left: 0,
  top: 0,
  right: width,
  bottom: height,
});

/**
 * A fabric from a picture of it: chosen or dropped, cropped, its scale set by two taps on a known
 * length, its stripe or repeat found and corrected by hand. The picture never leaves the device.
 */
export default function Photo({ shown }: { shown: Answered }) {
  const { brief } = shown;
  const { state, open, find, stop } = usePhoto();
  const [fabric, setFabric] = useState(brief.fabrics[0].id);
  const [taps, setTaps] = useState<readonly Tap[]>([]);
  const [length, setLength] = useState(brief.unit === "in" ? "6" : "150");
  const [level, setLevel] = useState(false);
  const [cut, setCut] = useState<Box | null>(null);
  const id = useId();
  const name = brief.fabrics.find((f) => f.id === fabric)?.name ?? fabric;

  const choose = (file: Blob | undefined): void => {
    if (!file) return;
    setTaps([]);
    setCut(null);
    open(file, name);
  };
  const drop = (e: DragEvent): void => {
    e.preventDefault();
    choose(e.dataTransfer.files[0]);
  };
  const problem = lengthTextProblem(length, brief.unit)?.problem;
  const [a, b] = taps;
  const perUnit =
    a && b && !problem ? scaleFromTaps(a, b, knownLength(length, brief.unit)) : undefined;

  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: dropping is beside the field, not instead
    <div className="photo" onDragOver={(e) => e.preventDefault()} onDrop={drop}>
      <p>
        <label htmlFor={`${id}-fabric`}>Fabric </label>
        <select id={`${id}-fabric`} value={fabric} onChange={(e) => setFabric(e.target.value)}>
          {brief.fabrics
            .filter((f) => f.kind !== "strip-set")
            .map((f) => (
              <option key={f.id} value={f.id}>
                {f.name}
              </option>
            ))}
        </select>{" "}
        <label htmlFor={`${id}-file`}>its picture </label>
        <input
          id={`${id}-file`}
          type="file"
          accept="image/png,image/jpeg,image/webp"
          onChange={(e) => choose(e.target.files?.[0])}
        />
      </p>
      {state.busy !== null && (
        <p>
          <progress value={state.busy} aria-label="Looking at the picture" />{" "}
          <button type="button" className="touch tall" onClick={stop}>
            Stop
          </button>
        </p>
      )}
      {state.refused && (
        <p role="alert" className="problem">
          {say(state.refused, { step: stepOfBrief(brief) })}
        </p>
      )}
      {state.failed && (
        <p role="alert" className="problem">
          The picture could not be read: {state.failed}
        </p>
      )}
      {state.opened && (
        <>
          {state.opened.notes.map((f) => (
            <p key={f.code} className="small">
              {say(f, { step: stepOfBrief(brief) })}
            </p>
          ))}
          <Shaping
            opened={state.opened}
            taps={taps}
            onTaps={setTaps}
            crop={cut ?? whole(state.opened)}
            onCrop={setCut}
          />
          <p>
            <label htmlFor={`${id}-length`}>
              From ring to ring it is{" "}
              <input
                id={`${id}-length`}
                type="text"
                size={8}
                value={length}
                aria-invalid={problem !== undefined}
                onChange={(e) => setLength(e.target.value)}
              />{" "}
              {brief.unit}
            </label>{" "}
            <label className="touch tall">
              <input type="checkbox" checked={level} onChange={(e) => setLevel(e.target.checked)} />{" "}
              straighten by this line
            </label>{" "}
            <button
              type="button"
              className="touch tall"
              disabled={perUnit === undefined || state.busy !== null}
              onClick={() =>
                state.opened &&
                find(level && a && b ? angleToLevel(a, b) : 0, cut ?? whole(state.opened))
              }
            >
              Find its stripe or repeat
            </button>
          </p>
          {problem && (
            <p role="alert" className="small problem">
              {problem}
            </p>
          )}
          {a && b && !problem && perUnit === undefined && (
            <p role="alert" className="small problem">
              The rings are too near each other to measure by.
            </p>
          )}
        </>
      )}
      {state.found && perUnit !== undefined && (
        <Taking
          key={`${fabric} ${perUnit} ${state.found.data.length}`}
          brief={brief}
          fabric={fabric}
          found={state.found}
          perUnit={perUnit}
          onTaken={stop}
        />
      )}
    </div>
  );
}
