export function fileFor(folder: string, address: string): string | undefined;
export function serve(
  folder: string,
  options?: { port?: number; prefix?: string },
): Promise<{ address: string; close(): Promise<void> }>;
