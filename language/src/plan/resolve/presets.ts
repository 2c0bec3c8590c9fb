import { URI } from 'langium';
import type { Definition, Stated } from '../../../grammar/generated/ast.ts';
import type { Preset, Spread } from '../model.ts';
import { packageOf } from '../names/packages.ts';
import { placeOf } from '../place.ts';
import { definedBy } from './defined.ts';
import { type Gathered, likeChain } from './gather.ts';

/** Which versions a plan is built on: editions of what it is like, packages of what it uses. */
export function versionsOf(
    definition: Definition,
    plan: Pick<Spread, 'boat' | 'target' | 'method' | 'event' | 'lines'>,
    { versions }: Gathered,
): Pick<Spread, 'presets' | 'packages'> {
    const packageFrom = (uri: string): string | undefined => {
        // Most files are of none, and this is asked of every line.
        if (!uri.includes('/node_modules/')) return undefined;
        const own = packageOf(URI.parse(uri));
        return own && [own.name, versions.get(uri)].filter(Boolean).join(' ');
    };
    const chain = likeChain(definition);
    const presets = chain.flatMap((each): Preset[] => {
        const from = packageFrom(placeOf(each).uri);
        const edition = editionOf(each);
        if (from === undefined && edition === undefined) return [];
        return [
            { title: definedBy(each).title, ...(edition && { edition }), ...(from && { package: from }) },
        ];
    });
    const used = [
        plan.boat,
        plan.target,
        plan.method,
        plan.event,
        ...plan.lines.flatMap(({ outfit, lure, teaser, bait, method }) => [
            outfit,
            lure,
            teaser,
            bait,
            method,
        ]),
    ];
    const uris = [
        ...chain.map((each) => placeOf(each).uri),
        ...used.flatMap((said) => (said ? [said.value.origin.place.uri] : [])),
    ];
    const packages = [...new Set(uris.flatMap((uri) => packageFrom(uri) ?? []))].sort();
    return { ...(presets.length > 0 && { presets }), ...(packages.length > 0 && { packages }) };
}

function editionOf({ entries = [] }: Definition): string | undefined {
    const edition = entries.find(
        (entry): entry is Stated => entry.$type === 'Stated' && entry.word === 'edition',
    );
    return edition?.text;
}
