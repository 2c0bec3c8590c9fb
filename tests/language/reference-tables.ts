import { library } from '../../language/src/library/library.ts';
import { type Context, type Property, vocabulary } from '../../language/src/plan/vocabulary.ts';
import { type Dimension, unitsOf } from '../../language/src/units/unit.ts';

/** The reference with everything that the source knows brought up to date: what stands between its marks. */
export function renewed(page: string): string {
    const tables = { units: unitTable(), library: libraryTable(), words: wordTables() };
    return Object.entries(tables).reduce(
        (text, [mark, made]) =>
            text.replace(
                new RegExp(`(<!-- ${mark} -->\n)[\\s\\S]*?(\n<!-- end -->)`),
                (_, before, after) => `${before}\n${made}${after}`,
            ),
        page,
    );
}

const DIMENSIONS: readonly (readonly [spoken: string, dimension: Dimension])[] = [
    ['length', 'length'],
    ['force and mass', 'load'],
    ['speed', 'speed'],
    ['angle', 'angle'],
    ['time', 'time'],
    ['share', 'share'],
    ['temperature', 'temperature'],
    ['volume', 'volume'],
];

function unitTable(): string {
    const rows = DIMENSIONS.map(([spoken, dimension]) => [
        spoken,
        listed(unitsOf(dimension).map(({ symbol }) => symbol)),
        listed(unitsOf(dimension).flatMap(({ aliases }) => aliases)),
    ]);
    return table(['what', 'units', 'read as well, in any case'], rows);
}

function libraryTable(): string {
    const rows = [...library].map(([name, text]) => {
        const names = new Map<string, string[]>();
        for (const [, kind, defined] of text.matchAll(/^([a-z]+) ([a-z-]+) .*\{/gm)) {
            names.set(kind!, [...(names.get(kind!) ?? []), defined!]);
        }
        return [`\`layback:${name}\``, [...names].map(([kind, all]) => `${kind}: ${listed(all)}`).join('; ')];
    });
    return table(['file', 'what is in it'], rows);
}

/** Blocks with the same words share a table. */
function wordTables(): string {
    const blocks = new Map<string, Context[]>();
    for (const context of Object.keys(vocabulary) as Context[]) {
        const made = wordTable(vocabulary[context]);
        blocks.set(made, [...(blocks.get(made) ?? []), context]);
    }
    return [...blocks]
        .map(([made, contexts]) => `### ${contexts.map(titleOf).join(' · ')}\n\n${made}`)
        .join('\n');
}

function wordTable(properties: readonly Property[]): string {
    const rows = properties.map(({ word, example, says, otherwise, many, choices }) => [
        `\`${word}\`${many ? ' +' : ''}`,
        `\`${example}\``,
        [says, choices && `One of ${listed(choices)}.`, otherwise && `[${otherwise}]`]
            .filter(Boolean)
            .join(' '),
    ]);
    return table(['word', 'as in', 'what it says'], rows);
}

/** How a block is spoken of, where its own word does not say it. */
const SPOKEN: Readonly<Partial<Record<Context, string>>> = {
    flat: '`flat clip` of a boat',
    'extra position': '`position` of a boat',
    'rod limits': '`rod` of rules',
    position: 'A position of a spread',
    event: 'An event of a log',
    foot: '`foot` of outriggers',
    spool: '`spool` of a reel',
    double: '`double` of an outfit',
    drag: '`drag` of an outfit or a position',
    roles: '`roles` of a spread',
    fallback: '`fallback` of a spread',
};

const OF_BOAT = new Set<Context>(['wash', 'outriggers', 'centre rigger', 'point', 'holder']);
const OF_RULES = new Set<Context>(['limits', 'gaff', 'skirted', 'natural', 'plug', 'main']);

function titleOf(context: Context): string {
    const whose = OF_BOAT.has(context) ? ' of a boat' : OF_RULES.has(context) ? ' of rules' : '';
    return SPOKEN[context] ?? `\`${context}\`${whose}`;
}

function listed(words: readonly string[]): string {
    return words.map((word) => `\`${word}\``).join(', ');
}

function table(heads: readonly string[], rows: readonly (readonly string[])[]): string {
    const widths = heads.map((head, column) =>
        Math.max(...[head, ...rows.map((row) => row[column]!)].map(({ length }) => length)),
    );
    const line = (cells: readonly string[]) =>
        `| ${cells.map((cell, column) => cell.padEnd(widths[column]!)).join(' | ')} |\n`;
    return [heads, widths.map((width) => '-'.repeat(width)), ...rows].map(line).join('');
}
