import { useState } from "react";
import { askBow, askHole, askOneHand } from "../../../core/answer/otherwise/ask.ts";
import { sayMirrored } from "../../../core/answer/otherwise/mirrored.ts";
import { handedPieces } from "../../../core/answer/otherwise/one-hand.ts";
import type { Answered } from "../answers.ts";
import { Said } from "../said.tsx";
import { Field } from "../shop/parts.tsx";
import "../shop/shop.css";
import "./otherwise.css";

/** What follows when it goes otherwise than it is drawn: asked in a sentence, answered below it. */
export function Otherwise({ now }: { now: Answered }) {
  const { brief, answer } = now;
  if (answer.wedges.length === 0) return null;
  const sets = brief.fabrics.some((f) => f.kind === "strip-set");
  return (
    <section className="question otherwise" aria-labelledby="otherwise">
      <h2 id="otherwise">And if it goes otherwise?</h2>
      <div className="body">
        <Hole now={now} />
        {sets && <Bow now={now} />}
        {handedPieces(brief, answer).length > 0 && <Hands now={now} />}
      </div>
    </section>
  );
}

const Told = ({ lines }: { lines: readonly string[] }) => (
  <div role="status">
    {lines.length > 0 && (
      <ul className="told">
        {lines.map((line) => (
          <li key={line}>
            <Said text={line} />
          </li>
        ))}
      </ul>
    )}
  </div>
);

function Hole({ now: { brief, answer } }: { now: Answered }) {
  const [hole, setHole] = useState("");
  return (
    <>
      <p className="shop-sentence">
        Eight points need not meet: leave a hole{" "}
        <Field label="Width of the hole in the middle" value={hole} onTake={setHole} hint="none" />{" "}
        {brief.unit} across in the middle.
      </p>
      <Told lines={hole === "" ? [] : askHole(brief, answer, hole)} />
    </>
  );
}

function Bow({ now: { brief, answer } }: { now: Answered }) {
  const [bow, setBow] = useState("");
  const [long, setLong] = useState(brief.unit === "in" ? "40" : "1000");
  return (
    <>
      <p className="shop-sentence">
        A strip set came out bowed: laid against a straight edge it gapes{" "}
        <Field label="Gap of the bowed strip set" value={bow} onTake={setBow} hint="nothing" />{" "}
        {brief.unit} over{" "}
        <Field label="Length of the bowed strip set" value={long} onTake={setLong} /> {brief.unit}.
      </p>
      <Told lines={bow === "" ? [] : askBow(brief, answer, bow, long)} />
    </>
  );
}

function Hands({ now: { brief, answer } }: { now: Answered }) {
  const handed = handedPieces(brief, answer);
  const [letter, setLetter] = useState(handed[0].letter);
  const [cut, setCut] = useState("");
  return (
    <>
      <Told lines={sayMirrored(brief, answer)} />
      <p className="shop-sentence">
        All were cut the same hand:{" "}
        <Field label="How many were cut one hand" value={cut} onTake={setCut} hint="none" /> of{" "}
        <Field
          label="Letter of the piece that was cut one hand"
          value={letter}
          onTake={setLetter}
        />
        .
      </p>
      <Told lines={cut === "" ? [] : askOneHand(brief, answer, letter, cut)} />
    </>
  );
}
