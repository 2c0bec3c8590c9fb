import type { Finding } from '../plan/finding.ts';

/** Colours of a terminal, or none. Every colour repeats what the words beside it say. */
export interface Ink {
    readonly severity: (severity: Finding['severity'], text: string) => string;
    readonly strong: (text: string) => string;
    readonly faint: (text: string) => string;
    readonly accent: (text: string) => string;
}

const paint = (open: number, close: number) => (text: string) => `\x1b[${open}m${text}\x1b[${close}m`;
const bare = (text: string) => text;

const severities = { error: paint(31, 39), warning: paint(33, 39), hint: paint(36, 39) };

export const colours: Ink = {
    severity: (severity, text) => severities[severity](text),
    strong: paint(1, 22),
    faint: paint(2, 22),
    accent: paint(36, 39),
};

export const noColours: Ink = { severity: (_, text) => text, strong: bare, faint: bare, accent: bare };
