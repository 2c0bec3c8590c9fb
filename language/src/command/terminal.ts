import { colours, type Ink, noColours } from '../reports/ink.ts';

/** What was asked for goes to `out`; everything else, also progress, to `log`. */
export interface Terminal {
    readonly out: (what: string | Uint8Array) => void;
    readonly log: (text: string) => void;
    /** For what goes to `out`. */
    readonly ink: Ink;
    /** Of the screen that `out` goes to; absent where it goes to a file or another program. */
    readonly columns: number | undefined;
}

export const terminal: Terminal = {
    out: (what) => process.stdout.write(what),
    log: (text) => process.stderr.write(`${text}\n`),
    get ink() {
        return coloured() ? colours : noColours;
    },
    get columns() {
        return process.stdout.isTTY ? process.stdout.columns || undefined : undefined;
    },
};

/** NO_COLOR and FORCE_COLOR as no-color.org and force-color.org define them; the first one wins. */
function coloured(): boolean {
    const { NO_COLOR, FORCE_COLOR, TERM } = process.env;
    if (NO_COLOR) return false;
    if (FORCE_COLOR) return FORCE_COLOR !== '0';
    return process.stdout.isTTY === true && TERM !== 'dumb';
}
