import type { Defined } from '../model/defined.ts';
import type { Spread } from '../model.ts';
import type { Said } from '../origin.ts';
import type { Change } from './compare.ts';
import { differences } from './differences.ts';
import { isRenaming, type Renamed, renamedAmong, type Used } from './renamed.ts';

type DefinitionChange = Change & { kind: 'definition' };

/** What one plan uses by one name and the other by another, although it is the same. */
export function renamedDefinitions(before: Spread, after: Spread): Renamed[] {
    return renamedAmong([...definitionsOf(before).values()], [...definitionsOf(after).values()]);
}

/** What both plans use by one name, and what became of it in between: a boat measured anew, an outfit's other line. */
export function compareDefinitions(
    before: Spread,
    after: Spread,
    renamed: readonly Renamed[],
): DefinitionChange[] {
    const [old, now] = [definitionsOf(before), definitionsOf(after)];
    const common = [...old.keys()].filter((key) => now.has(key)).sort();
    return common.flatMap((key): DefinitionChange[] => {
        const [was, is] = [old.get(key)!, now.get(key)!];
        return differences(contentOf(was.definition), contentOf(is.definition))
            .filter((difference) => !isRenaming(difference, renamed))
            .map((difference) => ({
                kind: 'definition',
                of: was.of,
                name: was.definition.name,
                ...difference,
            }));
    });
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
