import { AstUtils } from 'langium';
import type { Definition } from '../../../grammar/generated/ast.ts';
import { dragsOf } from '../../plan/analyse/drags.ts';
import type { Outfit, SpreadLine } from '../../plan/model.ts';
import { spoken } from '../../plan/names/kinds.ts';
import { LIBRARY_SCHEME } from '../../plan/names/uses.ts';
import { definedBy } from '../../plan/resolve/defined.ts';
import { Gathered, gather, likeChain } from '../../plan/resolve/gather.ts';
import { definitionName } from '../../plan/resolve/table.ts';
import { outfitOf } from '../../plan/resolve/tackle.ts';
import { referencesTo } from '../references.ts';
import type { EditorServices } from '../services.ts';
import { aboutSpool, dragWords } from './line.ts';
import { code, doc, type Part, rows, text, title } from './page.ts';
import type { Speech } from './speech.ts';

/** A definition as whoever names it gets it: what it says, with what it is like below it. */
export function aboutDefinition(definition: Definition, speech: Speech, services: EditorServices): Part[] {
    const { title: named, doc: remark } = definedBy(definition);
    const like = likeChain(definition).map(definitionName);
    const aside = [headed(definition), like.length > 0 && `like ${like.join(', ')}`]
        .filter(Boolean)
        .join(', ');
    return [
        title(named, aside),
        ...doc(remark),
        ...says(definition),
        ...(definition.kind === 'outfit' ? aboutDrags(outfitOf(definition, new Gathered()), speech) : []),
        text(whereWords(definition, services)),
    ];
}

function headed(definition: Definition): string {
    const head = [definition, ...likeChain(definition)].flatMap(
        (each) => (each as { head?: string }).head ?? [],
    )[0];
    return [spoken(definition.kind), head].filter(Boolean).join(', ');
}

/** Its properties one below the other, as they are written, wherever they are. */
function says(definition: Definition): Part[] {
    const lines = [...gather(definition, new Gathered())].flatMap(([key, slots]) => {
        if (key.startsWith('position ')) return [];
        return slots.flatMap(({ node }) => (node.$cstNode ? [oneLine(node.$cstNode.text)] : []));
    });
    const most = 16;
    const shown =
        lines.length > most ? [...lines.slice(0, most - 1), `// and ${lines.length - most + 1} more`] : lines;
    return shown.length > 0 ? [code(shown.join('\n'))] : [];
}

function aboutDrags(outfit: Outfit, speech: Speech): Part[] {
    // A line of a plan with nothing decided: the drags as they are measured on the outfit.
    const bare = {
        outfit: { value: outfit, origin: outfit.origin },
        drag: outfit.drag,
    } as unknown as SpreadLine;
    const drags = dragsOf(bare);
    return [
        ...rows(drags.map((drag) => [`Drag ${drag.stage}`, dragWords(drag, speech)])),
        ...aboutSpool(drags, speech),
    ];
}

function whereWords(definition: Definition, services: EditorServices): string {
    const { uri } = AstUtils.getDocument(definition);
    const file = uri.path.slice(uri.path.lastIndexOf('/') + 1);
    const place = uri.scheme === LIBRARY_SCHEME ? 'In the built-in library' : `In ${file}`;
    const count = referencesTo(definition, services).length;
    const named = count === 0 ? 'named nowhere' : count === 1 ? 'named once' : `named ${count} times`;
    return `${place}, ${named}.`;
}

function oneLine(written: string): string {
    return written.replace(/\/\/[^\n\r]*/g, '').replace(/\s+/g, ' ');
}
