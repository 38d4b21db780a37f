export const metaPolicy: string;
export const headerPolicy: string;
