import { useEffect, useSyncExternalStore } from "react";
import { flushSync } from "react-dom";
import type { Brief } from "../../core/brief/index.ts";
import { Boundary } from "../crash/index.ts";
import { acceptDrops, type KeepStore } from "../keep/index.ts";
import { followDesign } from "./answers.ts";
import { KeepContext } from "./KeepContext.ts";
import { later } from "./later.tsx";
import { Page } from "./Page.tsx";
import { useView, view } from "./view.ts";

const Designs = later(() => import("./Designs.tsx").then((m) => m.Designs));
const Shop = later(() => import("./shop/Shop.tsx").then((m) => m.Shop));

const SewingTable = later(() =>
  import("./answer/sewing/SewingTable.tsx").then((m) => m.SewingTable),
);

const onHash = (tell: () => void): (() => void) => {
  addEventListener("hashchange", tell);
  return () => removeEventListener("hashchange", tell);
};

/** The page or the list of designs, by the address; what both share stands here. */
export function App({ keep, fresh }: { keep: KeepStore; fresh: () => Brief }) {
  const hash = useSyncExternalStore(onHash, () => location.hash);
  const theme = useView((v) => v.theme);
  useEffect(() => followDesign(keep), [keep]);
  useEffect(() => acceptDrops(window, keep.act.openGiven), [keep]);
  useEffect(() => {
    if (theme === "system") delete document.documentElement.dataset.theme;
    else document.documentElement.dataset.theme = theme;
  }, [theme]);
  useEffect(() => {
    const keys = (e: KeyboardEvent): void => {
      const field = (e.target as HTMLElement).closest("input");
      if (!(e.ctrlKey || e.metaKey) || e.altKey || field) return;
      const key = e.key.toLowerCase();
      if (key === "z" && !e.shiftKey) keep.act.undo();
      else if (key === "y" || (key === "z" && e.shiftKey)) keep.act.redo();
      else if (key === "s") void keep.act.saveFile();
      else if (key === "o") void keep.act.openFile();
      else return;
      e.preventDefault();
    };
    addEventListener("keydown", keys);
    return () => removeEventListener("keydown", keys);
  }, [keep]);
  useEffect(() => {
    const print = (printing: boolean) => () => flushSync(() => view.setState({ printing }));
    const [before, after] = [print(true), print(false)];
    addEventListener("beforeprint", before);
    addEventListener("afterprint", after);
    return () => {
      removeEventListener("beforeprint", before);
      removeEventListener("afterprint", after);
    };
  }, []);
  // biome-ignore lint/correctness/useExhaustiveDependencies: another screen shuts the word
  useEffect(() => view.setState({ word: null, lines: [], figure: null }), [hash]);
  return (
    <KeepContext value={keep}>
      <Boundary what="the page" retryWhen={hash}>
        <Screen hash={hash} fresh={fresh} />
      </Boundary>
      <Saying />
    </KeepContext>
  );
}

function Screen({ hash, fresh }: { hash: string; fresh: () => Brief }) {
  if (hash === "#designs") return <Designs fresh={fresh} />;
  if (hash === "#shop") return <Shop />;
  if (hash === "#sewing") return <SewingTable />;
  return <Page />;
}

/** Says what a change changed, and nothing else. */
function Saying() {
  const saying = useView((v) => v.saying);
  return (
    <p className="said" role="status" aria-live="polite" id="saying">
      {saying}
    </p>
  );
}
