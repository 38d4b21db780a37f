import type { Brief } from "../../core/brief/index.ts";
import type { Desk } from "./desk.ts";
import { chooseFile, chooseWhere, handOver, mayWrite, readText, writeFile } from "./files.ts";
import { replaced } from "./history.ts";
import { writeFileRow } from "./records.ts";
import { sentences } from "./say.ts";
import type { FileLink, Session } from "./session.ts";
import { fileName, fileText } from "./text.ts";

/** Real files of designs: open, save, and notice what other programs wrote to them. */
export class Filing {
  private readonly desk: Desk;

  constructor(desk: Desk) {
    this.desk = desk;
  }

  async openFile(): Promise<void> {
    const chosen = await chooseFile();
    if (chosen) await this.openGiven(chosen.file, chosen.handle);
  }

  async openGiven(file: File, handle?: FileSystemFileHandle): Promise<void> {
    const known = handle && (await this.designOf(handle));
    if (known && (await this.desk.openDesign(known))) return this.look();
    const got = await this.read(file);
    if (!got) return;
    const session = await this.desk.openNew(got.brief);
    const link = { name: file.name, text: got.text, handle, brief: got.brief };
    await this.link(session, { ...link, changedOnDisk: false });
  }

  text(session: Session): string {
    return fileText(session.line.brief, session.file?.text, this.desk.options.reader);
  }

  async saveFile(): Promise<void> {
    const session = this.desk.current;
    const handle = session?.file?.handle;
    if (!session || !handle) return this.saveFileAs();
    if (!(await mayWrite(handle, true))) this.refuse(handle.name, "the browser said no");
    else if (!(await this.changedOnDisk(session))) await this.write(session, handle);
  }

  async saveFileAs(): Promise<void> {
    const session = this.desk.current;
    if (!session) return;
    const name = session.file?.name ?? fileName(session.line.brief.title);
    const handle = await chooseWhere(name);
    if (handle === "unable") {
      handOver(name, this.text(session));
      this.desk.tell({ kind: "handed-over", name });
    } else if (handle) await this.write(session, handle);
  }

  async saveOverChanged(): Promise<void> {
    const session = this.desk.current;
    const handle = session?.file?.handle;
    if (session && handle && (await mayWrite(handle, true))) await this.write(session, handle);
  }

  async takeFromFile(): Promise<void> {
    const session = this.desk.current;
    const file = session?.file;
    if (!session || !file?.handle) return;
    const got = await this.read(await file.handle.getFile());
    if (!got) return;
    const words = `take ${file.name} as it is on disk`;
    const at = this.desk.now().toISOString();
    await session.become(replaced(session.line, words, at, got.brief));
    await this.link(session, { ...file, text: got.text, brief: got.brief, changedOnDisk: false });
  }

  /** Looks whether another program wrote to the file of the design on the page. */
  async look(): Promise<void> {
    const session = this.desk.current;
    const handle = session?.file?.handle;
    if (session && handle && (await mayWrite(handle, false))) await this.changedOnDisk(session);
  }

  private async changedOnDisk(session: Session): Promise<boolean> {
    const { file } = session;
    if (!file?.handle) return false;
    const disk = await readText(await file.handle.getFile());
    const changed = !("text" in disk) || disk.text !== file.text;
    if (changed !== file.changedOnDisk) {
      session.file = { ...file, changedOnDisk: changed, brief: changed ? null : file.brief };
      this.desk.publish();
    }
    if (changed && !file.changedOnDisk) this.desk.tell({ kind: "file-changed", name: file.name });
    return changed;
  }

  private async read(file: File): Promise<{ text: string; brief: Brief } | null> {
    const got = await readText(file);
    if (!("text" in got)) return this.refuse(file.name, got.why);
    const read = this.desk.options.reader.text(got.text);
    if (read.ok) return { text: got.text, brief: read.brief };
    return this.refuse(file.name, ...sentences(read.refusals));
  }

  private async write(session: Session, handle: FileSystemFileHandle): Promise<void> {
    const { brief } = session.line;
    const text = this.text(session);
    await writeFile(handle, text);
    await this.link(session, { name: handle.name, text, handle, brief, changedOnDisk: false });
  }

  /** Joins a design to its file, here and in the storage. */
  private async link(session: Session, file: FileLink): Promise<void> {
    session.file = file;
    this.desk.publish();
    const { name, text, handle } = file;
    const row = { design: session.id, name, text, ...(handle && { handle }) };
    // Where the storage is full or off the link lives as long as the tab: `kept` tells of it.
    await this.desk.base
      .get()
      .then((db) => writeFileRow(db, row))
      .catch(() => {});
  }

  private async designOf(handle: FileSystemFileHandle): Promise<string | undefined> {
    const rows = await this.desk.base
      .get()
      .then((db) => db.getAll("files"))
      .catch(() => []);
    const live = new Set(
      this.desk.state
        .getState()
        .designs.filter((d) => !d.deleted)
        .map((d) => d.id),
    );
    for (const row of rows)
      if (live.has(row.design) && (await row.handle?.isSameEntry(handle))) return row.design;
    return undefined;
  }

  private refuse(name: string, ...why: string[]): null {
    this.desk.tell({ kind: "refused", name, why });
    return null;
  }
}
