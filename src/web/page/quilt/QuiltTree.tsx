import { type KeyboardEvent, type ReactNode, useId, useMemo, useState } from "react";
import { patchSaid } from "../../../core/answer/say/phrases.ts";
import type { PlacedBlock } from "../../../core/quilt/types.ts";
import type { Answered } from "../answers.ts";
import { view } from "../view.ts";
import { blockOf, type Found, findSpot, placedIn } from "./spots.ts";

interface QuiltTreeProps {
  readonly shown: Answered;
  readonly onNear: (f: Found | null) => void;
  readonly onTouch: (f: Found | null) => void;
  readonly onZoom: (by: 1 | -1) => void;
  readonly children: ReactNode;
}

/** Where the keys are: a block, and in it a patch once gone in. */
interface At {
  readonly row: number;
  readonly column: number;
  readonly patch: number | null;
}

/** Blocks by rows, as they lie. */
function rowsOf(placed: readonly PlacedBlock[]): PlacedBlock[][] {
  const rows = new Map<number, PlacedBlock[]>();
  for (const p of placed) {
    const row = Number(/^r(\d+)/.exec(p.id)?.[1] ?? 0);
    rows.set(row, [...(rows.get(row) ?? []), p]);
  }
  return [...rows.values()];
}

/**
 * The quilt as a tree for keys and screen readers: rows, blocks, patches. Arrows move by block, Enter
 * goes in, Escape comes out. Only the row and the block the keys are at are spelled out.
 */
export function QuiltTree({ shown, onNear, onTouch, onZoom, children }: QuiltTreeProps) {
  const { answer, brief } = shown;
  const rows = useMemo(() => rowsOf(placedIn(shown)), [shown]);
  const [at, setAt] = useState<At>({ row: 0, column: 0, patch: null });
  const id = useId();
  const row = Math.min(at.row, rows.length - 1);
  const column = Math.min(at.column, (rows[row]?.length ?? 1) - 1);
  const placed = rows[row]?.[column];
  const block = placed && blockOf(answer, placed.blockId);
  const patch = at.patch === null ? null : block?.patches[at.patch % block.patches.length];

  const spotOf = (p: PlacedBlock, patchId: string): Found | null =>
    findSpot(shown, { placed: p.id, block: p.blockId, patch: patchId });
  const go = (next: At): void => {
    setAt(next);
    const p = rows[next.row]?.[next.column];
    const b = p && blockOf(answer, p.blockId);
    if (!p || !b) return;
    const i = next.patch ?? 0;
    view.setState({ under: null, spot: spotOf(p, b.patches[i % b.patches.length].id) });
  };
  const count = block?.patches.length ?? 1;
  const inside = (by: number): void =>
    go({ row, column, patch: ((at.patch ?? 0) + by + count) % count });
  const across = (dr: number, dc: number): void => {
    const r = Math.max(0, Math.min(rows.length - 1, row + dr));
    const c = Math.max(0, Math.min(rows[r].length - 1, column + dc));
    go({ row: r, column: c, patch: null });
  };
  const move = (dr: number, dc: number): void =>
    at.patch === null ? across(dr, dc) : inside(dc !== 0 ? dc : dr);

  const enter = (): void => {
    if (!placed || !block) return;
    if (at.patch === null) go({ row, column, patch: 0 });
    else if (patch) onTouch(spotOf(placed, patch.id));
  };
  const leave = (): void => {
    if (at.patch === null) view.setState({ spot: null });
    go({ row, column, patch: null });
    onNear(null);
  };
  const acts = new Map<string, () => void>([
    ["ArrowRight", () => move(0, 1)],
    ["ArrowLeft", () => move(0, -1)],
    ["ArrowDown", () => move(1, 0)],
    ["ArrowUp", () => move(-1, 0)],
    ["Home", () => go({ row, column: 0, patch: null })],
    ["End", () => go({ row, column: rows[row].length - 1, patch: null })],
    ["Enter", enter],
    ["Escape", leave],
    ["+", () => onZoom(1)],
    ["=", () => onZoom(1)],
    ["-", () => onZoom(-1)],
    ["0", () => onNear(null)],
  ]);
  const keys = (e: KeyboardEvent): void => {
    const act = acts.get(e.key);
    if (!act || e.ctrlKey || e.metaKey || e.altKey) return;
    e.preventDefault();
    act();
  };
  if (rows.length === 0) return children;
  const active = patch ? `${id}-patch` : `${id}-block`;

  return (
    <div
      className="tree"
      role="tree"
      tabIndex={0}
      aria-label="The quilt: arrows move by block, Enter goes in, Escape comes out, plus and minus come nearer and farther"
      aria-activedescendant={active}
      onKeyDown={keys}
      onFocus={(e) => e.target.matches(":focus-visible") && go({ row, column, patch: at.patch })}
    >
      {children}
      <div className="said">
        {rows.map((blocks, r) => (
          <div
            // biome-ignore lint/suspicious/noArrayIndexKey: rows are their numbers
            key={r}
            role="treeitem"
            aria-level={1}
            aria-expanded={r === row}
            aria-selected={false}
            tabIndex={-1}
          >
            {`Row ${r + 1}, ${blocks.length} blocks`}
            {r === row && placed && block && (
              // biome-ignore lint/a11y/useSemanticElements: a group of tree items
              <div role="group">
                <div
                  id={`${id}-block`}
                  role="treeitem"
                  aria-level={2}
                  aria-posinset={column + 1}
                  aria-setsize={blocks.length}
                  aria-expanded={at.patch !== null}
                  aria-selected={at.patch === null}
                  tabIndex={-1}
                >
                  {`Row ${row + 1}, block ${column + 1}, ${block.name}`}
                  {patch && (
                    // biome-ignore lint/a11y/useSemanticElements: a group of tree items
                    <div role="group">
                      <div
                        id={`${id}-patch`}
                        role="treeitem"
                        aria-level={3}
                        aria-posinset={(at.patch ?? 0) + 1}
                        aria-setsize={count}
                        aria-selected={true}
                        tabIndex={-1}
                      >
                        {patchSaid(brief, answer, block.id, patch.id)}
                      </div>
                    </div>
                  )}
                </div>
              </div>
            )}
          </div>
        ))}
      </div>
    </div>
  );
}
