/**
 * Lets the page work without a server from its second visit on. `onNewer` is told when a newer
 * edition lies ready; what it is given makes the next load show that edition.
 */
export async function worksOffline(onNewer: (take: () => void) => void): Promise<void> {
  if (!import.meta.env.PROD || !("serviceWorker" in navigator)) return;
  const helper = await navigator.serviceWorker.register("./sw.js").catch(() => null);
  if (!helper) return;
  const offer = (waiting: ServiceWorker) => onNewer(() => waiting.postMessage("take"));
  if (helper.waiting && navigator.serviceWorker.controller) offer(helper.waiting);
  helper.addEventListener("updatefound", () => {
    const coming = helper.installing;
    coming?.addEventListener("statechange", () => {
      if (coming.state === "installed" && navigator.serviceWorker.controller) offer(coming);
    });
  });
}
