import type { Definition, Part } from '../../../grammar/generated/ast.ts';
import type { Finding } from '../finding.ts';
import { LIBRARY_SCHEME } from '../names/uses.ts';
import { placeOf, placeOfProperty, uriOf } from '../place.ts';
import { baseOf, type Gathered, gather } from '../resolve/gather.ts';
import { definitionName, keyOf, type Slot, type Table, tabulate } from '../resolve/table.ts';
import { listed } from '../wording.ts';
import { problem } from './problem.ts';

/**
 * Parts that name again what the preset has: naming starts anew, so what the preset said on top of it is gone. Of a
 * material of the library nobody expects otherwise: `line nylon { ... }` is another line.
 */
export function checkLost(definition: Definition, gathered: Gathered): Finding[] {
    const base = baseOf(definition);
    if (!base) return [];
    return lostIn(tabulate(definition.entries ?? [], 'spread', ''), gather(base, gathered), base);
}

function lostIn(own: Table, below: Table, base: Definition): Finding[] {
    return [...own].flatMap(([key, [slot]]) => {
        const before = below.get(key)?.[0];
        if (!slot || !before) return [];
        if (slot.node.$type === 'PositionBlock') {
            return lostIn(slot.table ?? new Map(), before.table ?? new Map(), base);
        }
        return lostOf(slot, before, base);
    });
}

function lostOf({ node, table, of }: Slot, before: Slot, base: Definition): Finding[] {
    const named = of?.of?.ref;
    if (!named || named !== before.of?.of?.ref || !table?.size) return [];
    if (uriOf(named).startsWith(`${LIBRARY_SCHEME}:`)) return [];
    const lost = [...(before.table ?? [])]
        .filter(([key]) => !table.has(key))
        .map(([, [slot]]) => wordOf(slot!));
    if (lost.length === 0) return [];
    const part = node as Part;
    const at = placeOfProperty(part, 'of');
    const name = part.of!.$refText;
    const text = part.$cstNode!.text.replace(new RegExp(`\\s+${name}`), '');
    const them = lost.length === 1 ? 'it' : 'them';
    return [
        problem('preset-lost', at, {
            severity: 'hint',
            what: `Naming ${name} starts anew, so the ${listed(lost)} that ${titleOf(base)} says of it ${lost.length === 1 ? 'is' : 'are'} gone.`,
            why: 'What is not said is not judged.',
            remedy: `Leave the name out to keep ${them}, or say ${them} again.`,
            related: [{ at: placeOf(before.node), what: 'The preset says it here.' }],
            fixes: [{ title: `Leave out ${name}`, edits: [{ at: placeOf(part), text }] }],
        }),
    ];
}

function titleOf(definition: Definition): string {
    return ('title' in definition && definition.title) || definitionName(definition);
}

function wordOf({ node }: Slot): string {
    return 'word' in node ? String(node.word) : (keyOf(node) ?? '');
}
