import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import path from 'node:path';
import oniguruma from 'vscode-oniguruma';
import textmate from 'vscode-textmate';

const require = createRequire(import.meta.url);
const grammarFile = path.resolve('extension/syntaxes/layback.tmLanguage.json');

/** A stretch of text with the innermost scope that the editor's colours give it, `''` for none. */
export interface Piece {
    /** Offset in the text. */
    start: number;
    end: number;
    text: string;
    scope: string;
}

/** Takes a text apart as the editor does before any language server answers. */
export async function scopesOf(text: string): Promise<Piece[]> {
    const grammar = await loaded;
    const pieces: Piece[] = [];
    let stack = textmate.INITIAL;
    let start = 0;
    for (const line of text.split('\n')) {
        const { tokens, ruleStack, stoppedEarly } = grammar.tokenizeLine(line, stack);
        if (stoppedEarly) throw new Error(`The colours take too long over: ${line}`);
        for (const { startIndex, endIndex, scopes } of tokens) {
            const scope = scopes.length > 1 ? scopes.at(-1)!.replace(/\.layback$/, '') : '';
            const end = start + Math.min(endIndex, line.length);
            pieces.push({ start: start + startIndex, end, text: text.slice(start + startIndex, end), scope });
        }
        stack = ruleStack;
        start += line.length + 1;
    }
    return pieces;
}

const loaded = load();

async function load(): Promise<textmate.IGrammar> {
    const wasm = readFileSync(require.resolve('vscode-oniguruma/release/onig.wasm'));
    await oniguruma.loadWASM(new Uint8Array(wasm).buffer);
    const registry = new textmate.Registry({
        onigLib: Promise.resolve({
            createOnigScanner: (patterns) => new oniguruma.OnigScanner(patterns),
            createOnigString: (text) => new oniguruma.OnigString(text),
        }),
        loadGrammar: async () => textmate.parseRawGrammar(readFileSync(grammarFile, 'utf8'), grammarFile),
    });
    const grammar = await registry.loadGrammar('source.layback');
    if (!grammar) throw new Error(`${grammarFile} holds no grammar.`);
    return grammar;
}
