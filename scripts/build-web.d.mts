export const built: string;
export function needsBuild(): boolean;
export function buildIfNeeded(): void;
