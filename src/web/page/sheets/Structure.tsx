import type { ReactNode } from "react";
import { spoken } from "../../../core/answer/say/spoken.ts";
import { type Cell, type Item, type Page, textOf } from "../../../core/sheet/model.ts";

type Row = readonly Cell[];
type Part =
  | Exclude<Item, { kind: "table" | "rule" | "box" | "furniture" }>
  | { readonly kind: "rows"; readonly rows: readonly Row[] };

/** What a screen reader reads of a page: its headings, paragraphs, tables and described figures. */
export function Structure({ page }: { page: Page }) {
  return (
    <div className="structure">
      {partsOf(page.items).map((part, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: parts are known by their place
        <Part key={i} part={part} />
      ))}
    </div>
  );
}

/** Tables that go on are one; rules and feet are not read. */
function partsOf(items: readonly Item[]): Part[] {
  const parts: Part[] = [];
  for (const item of items) {
    const last = parts.findLast((p) => p.kind === "rows");
    if (item.kind === "table" && item.continues && last?.kind === "rows")
      parts[parts.indexOf(last)] = { kind: "rows", rows: [...last.rows, ...item.rows] };
    else if (item.kind === "table") parts.push({ kind: "rows", rows: item.rows });
    else if (item.kind === "text" || item.kind === "figure") parts.push(item);
  }
  return parts;
}

function Part({ part }: { part: Part }): ReactNode {
  switch (part.kind) {
    case "figure":
      return <p>Picture: {spoken(part.alt)}</p>;
    case "rows":
      return (
        <table>
          <tbody>
            {part.rows.map((row, i) => (
              // biome-ignore lint/suspicious/noArrayIndexKey: rows are known by their place
              <tr key={i}>
                {row.map((cell, k) => {
                  const text = spoken(textOf(cell.glyphs));
                  const key = `${k} ${text}`;
                  return cell.header ? (
                    <th key={key} scope="col">
                      {text}
                    </th>
                  ) : (
                    <td key={key}>{text}</td>
                  );
                })}
              </tr>
            ))}
          </tbody>
        </table>
      );
    case "text": {
      const text = spoken(textOf(part.glyphs));
      switch (part.role) {
        case "H1":
          return <h3>{text}</h3>;
        case "H2":
          return <h4>{text}</h4>;
        case "H3":
          return <h5>{text}</h5>;
        default:
          return <p>{text}</p>;
      }
    }
  }
}
