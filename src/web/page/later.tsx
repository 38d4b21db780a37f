import { type ComponentType, useEffect, useState } from "react";

const coming = new Set<() => Promise<unknown>>();

/** Brings every part that was left for later, once the page stands and has nothing else to do. */
export function bringTheRest(): void {
  const bring = (): void => {
    for (const load of coming) void load().catch(() => {});
  };
  if ("requestIdleCallback" in globalThis) requestIdleCallback(bring);
  else setTimeout(bring, 500);
}

/**
 * A part of the page whose code is not needed for the first view. Once its code is there it renders
 * at once, like any other; a failure to load it is thrown to the nearest boundary.
 */
export function later<P extends object>(load: () => Promise<ComponentType<P>>): ComponentType<P> {
  let Part: ComponentType<P> | null = null;
  const bring = async (): Promise<void> => {
    Part ??= await load();
    coming.delete(bring);
  };
  coming.add(bring);
  // biome-ignore lint/correctness/noComponentHookFactories: called once for each part, by its module
  return function Later(props: P) {
    const [failure, setFailure] = useState<{ readonly error: unknown } | null>(null);
    const [, look] = useState(false);
    useEffect(() => {
      if (!Part)
        bring().then(
          () => look(true),
          (error) => setFailure({ error }),
        );
    }, []);
    if (failure) throw failure.error;
    return Part && <Part {...props} />;
  };
}
