/// <reference lib="webworker" />
/**
 * The service worker: keeps every file of this build, so that the page works without a server, and
 * never asks any other host. The build puts in the edition and the list of files.
 *
 * A newer edition waits until no tab shows the old one, or until the page says "take". The files of
 * the edition before stay for the pages that still run it: none finds itself with half its files.
 */
declare const __EDITION__: string;
declare const __FILES__: readonly string[];

const worker = globalThis as unknown as ServiceWorkerGlobalScope;
const PREFIX = "eighthwise-files-";
const CACHE = PREFIX + __EDITION__;
const home = new URL("./", worker.location.href);

worker.addEventListener("install", (event) => {
  event.waitUntil(keepAll());
});

worker.addEventListener("activate", (event) => {
  event.waitUntil(letOldGo().then(() => worker.clients.claim()));
});

worker.addEventListener("message", (event) => {
  if (event.data === "take") void worker.skipWaiting();
});

worker.addEventListener("fetch", (event) => {
  const { request } = event;
  const url = new URL(request.url);
  if (request.method !== "GET" || url.origin !== home.origin) return;
  if (!url.pathname.startsWith(home.pathname)) return;
  event.respondWith(answer(request, url));
});

/** Takes each file from the server, past the browser's own cache; all or nothing. */
async function keepAll(): Promise<void> {
  const cache = await caches.open(CACHE);
  const keep = async (file: string) => {
    const address = new URL(file, home);
    const given = await fetch(address, { cache: "reload" });
    if (!given.ok) throw new Error(`${file}: ${given.status}`);
    // Some hosts lead index.html elsewhere; a browser refuses such an answer for a page.
    const { headers, redirected } = given;
    await cache.put(address, redirected ? new Response(await given.blob(), { headers }) : given);
  };
  await Promise.all(__FILES__.map(keep));
}

/** Keeps this edition and the one before it. Names come in the order they were made. */
async function letOldGo(): Promise<void> {
  const mine = (await caches.keys()).filter((name) => name.startsWith(PREFIX));
  const [last] = mine.filter((name) => name !== CACHE).slice(-1);
  const old = mine.filter((name) => name !== CACHE && name !== last);
  await Promise.all(old.map((name) => caches.delete(name)));
}

async function answer(request: Request, url: URL): Promise<Response> {
  const file = url.pathname === home.pathname ? new URL("index.html", home) : url;
  const address = file.href.split(/[?#]/)[0];
  const cache = await caches.open(CACHE);
  return (await cache.match(address)) ?? (await caches.match(address)) ?? fetch(request);
}

export {};
