/** Files and folders that leave the house, by their path in it. */
export const parts: readonly string[];

/** Lays out the extension as it is installed. */
export function layOut(folder: string): Readonly<Record<string, unknown>>;

/** Makes the package, here or in a folder, and says where it is. */
export function pack(into?: string): Promise<string>;
