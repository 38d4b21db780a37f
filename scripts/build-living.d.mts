import type { Plugin } from "vite";
export function livingTemplate(): Promise<string>;
export function livingAsset(): Plugin;
