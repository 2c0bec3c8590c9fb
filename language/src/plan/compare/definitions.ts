import type { Defined } from '../model/defined.ts';
import type { Spread } from '../model.ts';
import type { Said } from '../origin.ts';
import type { Change } from './compare.ts';
import { differences } from './differences.ts';

type DefinitionChange = Change & { kind: 'definition' };

/** What both plans use by one name, and what became of it in between: a boat measured anew, an outfit's other line. */
export function compareDefinitions(before: Spread, after: Spread): DefinitionChange[] {
    const [old, now] = [definitionsOf(before), definitionsOf(after)];
    const common = [...old.keys()].filter((key) => now.has(key)).sort();
    return common.flatMap((key): DefinitionChange[] => {
        const [was, is] = [old.get(key)!, now.get(key)!];
        return differences(contentOf(was.definition), contentOf(is.definition)).map((difference) => ({
            kind: 'definition',
            of: was.of,
            name: was.definition.name,
            ...difference,
        }));
    });
}

interface Used {
    readonly of: string;
    readonly definition: Defined;
}

/** Everything that a plan uses by name; the first use counts where a position changed it on the spot. */
function definitionsOf({ boat, target, method, event, lines }: Spread): Map<string, Used> {
    const used = new Map<string, Used>();
    const add = (of: string, said: Said<Defined> | undefined) => {
        const key = said && `${of} ${said.value.name}`;
        if (key !== undefined && !used.has(key)) used.set(key, { of, definition: said!.value });
    };
    add('boat', boat);
    add('species', target);
    add('rules', event);
    add('method', method);
    for (const line of lines) {
        add('outfit', line.outfit);
        add('lure', line.lure);
        add('teaser', line.teaser);
        add('bait', line.bait);
        add('method', line.method);
    }
    return used;
}

function contentOf({ name: _name, origin: _origin, doc: _doc, ...content }: Defined): object {
    return content;
}
