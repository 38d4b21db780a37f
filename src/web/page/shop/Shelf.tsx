import { useId, useState } from "react";
import { say } from "../../../core/findings/say.ts";
import { parseLength, stepOf, type Unit } from "../../../core/measure/index.ts";
import {
  type Bolt,
  readMoney,
  readShelf,
  shelfCsv,
  shelfIn,
  withUnit,
} from "../../../core/shop/index.ts";
import { sayAloud } from "../view.ts";
import { give } from "./give.ts";
import { Act, Field, Part, Pick } from "./parts.tsx";
import { shopStore, useShop } from "./store.ts";

const lengthProblem =
  (unit: Unit, empty: boolean) =>
  (text: string): string | undefined => {
    if (text === "") return empty ? undefined : "say how long it is, such as 6 1/2 yd";
    const r = parseLength(text, unit);
    return r.ok && r.length.value.compare(0) > 0
      ? undefined
      : `"${text}" is not a length above nothing`;
  };
const priceProblem = (text: string): string | undefined =>
  text === "" || readMoney(text) !== undefined
    ? undefined
    : `"${text}" is not a price, such as 12.95`;

/** The shelf of bolts: typed in its table, pasted, or dropped as a list; kept in this browser. */
export function ShelfPart({ unit: designed = "in" }: { unit?: Unit }) {
  const kept = useShop((s) => s.book.shelf);
  // An empty shelf is typed as the open design is; one with bolts as its words say.
  const shelf = kept.bolts.length === 0 ? { ...kept, unit: designed } : kept;
  const undo = useShop((s) => s.undoWords);
  const redo = useShop((s) => s.redoWords);
  const trouble = useShop((s) => s.trouble);
  const store = shopStore();
  const change = (words: string, id: string, next: Partial<Bolt>): void =>
    void store.edit(words, (b) => {
      const bolts = b.shelf.bolts.map((x) => (x.id === id ? cleaned({ ...x, ...next }) : x));
      b.shelf = { ...b.shelf, bolts };
    });
  const metric = shelf.unit === "mm";
  return (
    <Part heading="What lies on the shelf?" trade="bolts, kept in this browser, for every design">
      <p role="status">
        {trouble
          ? `The last change of the shelf is not kept: ${trouble.detail}.`
          : `${shelf.bolts.length} ${shelf.bolts.length === 1 ? "bolt" : "bolts"}.`}
      </p>
      {shelf.bolts.length > 0 && (
        <ul className="bolts">
          <li className="soft small heads" aria-hidden="true">
            <span>fabric</span>
            <span>usable width</span>
            <span>length</span>
            <span>price of one {metric ? "meter" : "yard"}</span>
            <span>note</span>
            <span />
          </li>
          {shelf.bolts.map((b) => (
            <li key={b.id}>
              <Field
                wide
                caption="fabric"
                label={`Fabric of bolt ${b.id.slice(1)}`}
                value={b.name}
                problem={(t) => (t === "" ? "a bolt needs a name" : undefined)}
                onTake={(name) => change(`the name of ${b.name}`, b.id, { name })}
              />
              <Field
                caption="usable width"
                label={`Usable width of ${b.name}`}
                value={b.width ?? ""}
                hint="as designed"
                problem={lengthProblem(shelf.unit, true)}
                onTake={(t) =>
                  change(`the width of ${b.name}`, b.id, {
                    width: t === "" ? undefined : withUnit(t, shelf.unit),
                  })
                }
              />
              <Field
                caption="length"
                label={`Length of ${b.name}`}
                value={b.length}
                problem={lengthProblem(shelf.unit, false)}
                onTake={(t) =>
                  change(`the length of ${b.name}`, b.id, { length: withUnit(t, shelf.unit) })
                }
              />
              <Field
                caption={`price of one ${metric ? "meter" : "yard"}`}
                label={`Price of ${b.name}`}
                value={b.price ?? ""}
                hint="none"
                problem={priceProblem}
                onTake={(t) => change(`the price of ${b.name}`, b.id, { price: t || undefined })}
              />
              <Field
                wide
                caption="note"
                label={`Note on ${b.name}`}
                value={b.note ?? ""}
                hint="dye lot, place"
                onTake={(t) => change(`the note on ${b.name}`, b.id, { note: t || undefined })}
              />
              <button
                type="button"
                className="touch tall"
                aria-label={`Take ${b.name} off the shelf`}
                onClick={() =>
                  void store.edit(`${b.name} off the shelf`, (book) => {
                    const bolts = book.shelf.bolts.filter((x) => x.id !== b.id);
                    book.shelf = { ...book.shelf, bolts };
                  })
                }
              >
                Take it off
              </button>
            </li>
          ))}
        </ul>
      )}
      {shelf.bolts.length > 0 && (
        <p className="shop-sentence">
          Lengths without a unit are{" "}
          <Pick
            label="Unit of the shelf"
            value={shelf.unit}
            options={[
              ["in", "inches, prices for one yard"],
              ["mm", "millimeters, prices for one meter"],
            ]}
            onPick={(unit) =>
              void store.edit("the unit of the shelf", (b) => {
                b.shelf = shelfIn(b.shelf, unit as Unit);
              })
            }
          />
          ; a length may always say its own: 2 yd, 3 m.
        </p>
      )}
      <AddBolts unit={shelf.unit} />
      <p className="acts">
        <Act disabled={!undo} onClick={() => void store.undo()}>
          Take back {undo ?? ""}
        </Act>
        {redo && <Act onClick={() => void store.redo()}>Do again {redo}</Act>}
        <Act
          disabled={shelf.bolts.length === 0}
          onClick={() => give("shelf.csv", shelfCsv(shelf), "text/csv;charset=utf-8")}
        >
          The shelf as CSV
        </Act>
      </p>
    </Part>
  );
}

/** A property that is set to nothing is none. */
const cleaned = (b: Bolt): Bolt =>
  Object.fromEntries(Object.entries(b).filter(([, v]) => v !== undefined)) as unknown as Bolt;

/** The next free name of a bolt. */
const nextId = (bolts: readonly Bolt[]): number =>
  Math.max(0, ...bolts.map((b) => Number(b.id.slice(1)) || 0)) + 1;

/** A list typed, pasted, chosen or dropped: read row by row, the bad rows told and left in the box. */
function AddBolts({ unit }: { unit: Unit }) {
  const id = useId();
  const [text, setText] = useState("");
  const [told, setTold] = useState<readonly string[]>([]);
  const add = (list: string): void => {
    const { shelf, list: read } = readShelf(list, unit);
    const step = stepOf(unit === "in" ? "1/8" : "1", unit);
    setTold(read.findings.map((f) => say(f, { step })));
    const rows = read.leftOut.map((r) => r.text);
    // Put right and sent again, they are read under the heading they came with.
    setText([...(read.heading && rows.length > 0 ? [read.heading] : []), ...rows].join("\n"));
    const n = shelf.bolts.length;
    if (n === 0) return;
    void shopStore().edit(n === 1 ? shelf.bolts[0].name : `${n} bolts`, (book) => {
      const first = nextId(book.shelf.bolts);
      const fresh = shelf.bolts.map((b, i) => ({ ...b, id: `b${first + i}` }));
      // An empty shelf takes the unit it was typed in.
      const here = book.shelf.bolts.length === 0 ? { ...book.shelf, unit } : book.shelf;
      book.shelf = { ...here, bolts: [...here.bolts, ...fresh] };
    });
    sayAloud(`${n} ${n === 1 ? "bolt" : "bolts"} on the shelf.`);
  };
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: the same list can be chosen or pasted
    <div
      className="add-bolts"
      onDragOver={(e) => e.preventDefault()}
      onDrop={(e) => {
        const [file] = e.dataTransfer.files;
        if (!file) return;
        e.preventDefault();
        e.stopPropagation();
        void file.text().then(add);
      }}
    >
      <label htmlFor={`${id}-list`}>
        Put bolts on it: one to a line, fabric, usable width, length; or drop a CSV list, whose
        headings may also name price and dye lot
      </label>
      <textarea
        id={`${id}-list`}
        rows={3}
        value={text}
        placeholder={unit === "in" ? "Kelp, 42, 8 yd" : "Kelp, 1100, 7 m"}
        onChange={(e) => setText(e.target.value)}
      />
      {told.length > 0 && (
        <div role="alert">
          <ul className="told small">
            {told.map((t) => (
              <li key={t}>{t}</li>
            ))}
          </ul>
        </div>
      )}
      <p className="acts">
        <Act disabled={text.trim() === ""} onClick={() => add(text)}>
          Put them on the shelf
        </Act>
        <label className="touch tall choose">
          Choose a list
          <input
            type="file"
            className="said"
            accept=".csv,.tsv,.txt,text/csv,text/plain"
            onChange={(e) => {
              const [file] = e.target.files ?? [];
              if (file) void file.text().then(add);
              e.target.value = "";
            }}
          />
        </label>
      </p>
    </div>
  );
}
