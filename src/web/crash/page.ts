import { type Packed, Pictures, unpack } from "../keep/pack.ts";
import { all, field, type RawDesign, rawDesign } from "../keep/raw.ts";

/**
 * The crash page: lists what this browser keeps and hands it out, with the browser's own calls. It
 * shares with the page only `raw.ts` and `pack.ts`, which import nothing and judge nothing.
 */
const DATABASE = "eighthwise";
const byId = (id: string) => document.getElementById(id) as HTMLElement;

/** The database in whatever version it has; null when there is none. Makes and changes nothing. */
function openAsItIs(name: string): Promise<IDBDatabase | null> {
  return new Promise((resolve, reject) => {
    const request = indexedDB.open(name);
    request.onupgradeneeded = () => request.transaction?.abort();
    request.onsuccess = () => resolve(request.result);
    request.onerror = () =>
      request.error?.name === "AbortError" ? resolve(null) : reject(request.error);
  });
}

async function list(): Promise<void> {
  const db = await openAsItIs(DATABASE);
  if (!db?.objectStoreNames.contains("designs")) return say("This browser keeps no designs.");
  const rows = await all(db.transaction("designs").objectStore("designs"));
  const ids = rows.map((row) => String(field(row, "id")));
  const designs = await Promise.all(ids.map((id) => rawDesign(db, id)));
  byId("designs").append(...designs.map((raw, i) => entry(raw, ids[i])));
  say(rows.length === 1 ? "One design is kept." : `${rows.length} designs are kept.`);
}

function entry(raw: RawDesign, id: string): HTMLElement {
  const title = String(field(raw.design, "title") ?? id);
  const name = title.replace(/[^\p{L}\p{N}]+/gu, "-") || "design";
  const everything = JSON.stringify(raw, null, 2);
  const brief = documentOf(raw);
  const facts = [
    `written ${dated(field(raw.design, "savedAt"))}`,
    `${Math.ceil(everything.length / 1024)}\u00a0kB`,
    ...(field(raw.design, "deleted") ? ["among the deleted"] : []),
  ];
  const item = document.createElement("li");
  item.append(
    text("span", "title", title),
    text("span", "facts", facts.join(", ")),
    ...(brief === null ? [] : [download("Download the design", `${name}.json`, brief)]),
    download("Download all that is stored of it", `${name}-all.json`, everything),
  );
  return item;
}

function dated(at: unknown): string {
  const day = new Date(String(at));
  return Number.isNaN(day.getTime()) ? "at an unknown time" : day.toLocaleString("en-US");
}

/** The design as a file the page can open again, photos put back; null when it is too damaged. */
function documentOf(raw: RawDesign): string | null {
  try {
    const kept = raw.others.pictures as { n: number; text: string }[];
    const document = unpack(field(raw.design, "doc") as Packed, new Pictures(kept ?? []));
    return document === undefined ? null : `${JSON.stringify(document, null, 2)}\n`;
  } catch {
    return null;
  }
}

function text(tag: string, className: string, content: string): HTMLElement {
  const element = document.createElement(tag);
  element.className = className;
  element.textContent = content;
  return element;
}

function download(label: string, name: string, content: string): HTMLElement {
  const link = document.createElement("a");
  link.textContent = label;
  link.download = name;
  link.href = URL.createObjectURL(new Blob([content], { type: "application/json" }));
  return link;
}

const say = (sentence: string) => {
  byId("state").textContent = sentence;
};

async function anew(): Promise<void> {
  const helpers = (await navigator.serviceWorker?.getRegistrations?.()) ?? [];
  await Promise.all(helpers.map((helper) => helper.unregister()));
  const names = globalThis.caches ? await caches.keys() : [];
  await Promise.all(names.map((name) => caches.delete(name)));
  location.href = "./index.html";
}

byId("anew").addEventListener("click", () => void anew());
list().catch((error) => say(`The storage could not be read: ${(error as Error).message}`));
