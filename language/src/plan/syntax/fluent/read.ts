import type { AstReflection, LangiumCoreServices, ParseResult } from 'langium';
import { meantBy } from '../values.ts';
import type { Call, Choice, Into, Repeat, RuleRow, Step, Table, Take } from './table.ts';
import { Branch, type Ground, type Leaf, Root } from './tree.ts';
import { wordsBy } from './words.ts';

/** A node while it is made. */
type Made = { $type: string; $cstNode?: Branch; $container?: Made } & Record<string, unknown>;

/** What a reader leans on; the linker and the grammar only when it comes to them. */
export interface Aids {
    readonly reflection: AstReflection;
    readonly linker: () => LangiumCoreServices['references']['Linker'];
    readonly element: Ground['element'];
}

/**
 * Reads texts without faults: the tree is the one that the toolkit's parser makes, made straight from the table of the
 * grammar, in which one token decides every choice.
 *
 * @returns a function that gives up, with nothing, at whatever fits nowhere
 */
export function readerBy(
    table: Table,
    { reflection, linker, element }: Aids,
): (text: string) => ParseResult | undefined {
    const { rules, members, tokens } = table;
    const wordsOf = wordsBy(table);
    const defaultsOf = defaultsBy(reflection);
    const ways = new Map<Choice | Repeat, Int8Array>();

    let leaves: readonly Leaf[] = [];
    let hidden: readonly Leaf[] = [];
    let next = 0;
    let nextHidden = 0;
    let branch = new Branch();
    let node: Made = { $type: '' };
    /** While a rule is read that is but a text. */
    let text: string | undefined;

    return (input) => {
        const words = wordsOf(input);
        if (!words) return undefined;
        ({ leaves, hidden } = words);
        next = nextHidden = 0;
        const root = new Root(input, { lines: words.lines, element });
        branch = root;
        node = { $type: rules[0]!.type! };
        text = undefined;
        if (!follow(rules[0]!.step) || next < leaves.length) return undefined;
        const value = finish(node, root);
        placeHidden(Number.POSITIVE_INFINITY);
        root.made = value;
        return {
            value,
            lexerErrors: [],
            parserErrors: [],
            lexerReport: { diagnostics: [] },
        };
    };

    /** @returns whether the text went on as the step says */
    function follow(step: Step): boolean {
        switch (step.do) {
            case 'take':
                return take(step);
            case 'call':
                return call(step);
            case 'group':
                return step.steps.every(follow);
            case 'choice': {
                const chosen = wayOf(step);
                return chosen >= 0 && follow(step.steps[chosen]!);
            }
            case 'maybe':
                return wayOf(step) < 0 || follow(step.step);
            case 'many':
                while (wayOf(step) >= 0) if (!follow(step.step)) return false;
                return true;
        }
    }

    function wayOf(step: Choice | Repeat): number {
        const leaf = leaves[next];
        if (!leaf) return -1;
        let way = ways.get(step);
        if (!way) {
            way = waysOf(step.on);
            ways.set(step, way);
        }
        return way[leaf.tokenType.number]!;
    }

    function waysOf(on: readonly (readonly number[])[]): Int8Array {
        const way = new Int8Array(tokens.length).fill(-1);
        for (const [number, types] of on.entries())
            for (const type of types)
                for (const each of members[type] ?? [type]) if (way[each] === -1) way[each] = number;
        return way;
    }

    function take(step: Take): boolean {
        const leaf = leaves[next];
        if (!leaf) return false;
        const type = leaf.tokenType.number;
        if (type !== step.token && !members[step.token]?.includes(type)) return false;
        next++;
        placeHidden(leaf.offset);
        leaf.step = step;
        put(leaf, branch);
        if (text !== undefined) text += leaf.image;
        else if (step.into)
            assign(step.into, step.value ? meantBy(step.value, leaf.image) : leaf.image, leaf);
        return true;
    }

    function call(step: Call): boolean {
        const rule = rules[step.rule]!;
        if (rule.kind === 'fragment') return follow(rule.step);
        const outer = branch;
        const inner = new Branch(step);
        put(inner, outer);
        branch = inner;
        const went = rule.kind === 'text' ? readText(rule, step) : readNode(rule, step);
        branch = outer;
        return went;
    }

    function readText({ step }: RuleRow, { into }: Call): boolean {
        const around = text;
        text = '';
        const went = follow(step);
        const read = text;
        text = around;
        if (went && into) assign(into, read, branch);
        else if (text !== undefined) text += read;
        return went;
    }

    function readNode({ type, step }: RuleRow, { into }: Call): boolean {
        const around = node;
        node = { $type: type! };
        const went = follow(step);
        const read = finish(node, branch);
        // A rule that leads to another gives way to what that one made.
        node = into ? around : read;
        if (!into) return went;
        branch.made = read;
        assign(into, read, branch);
        return went;
    }

    function finish(made: Made, all: Branch): Made {
        made.$cstNode = all;
        for (const [property, value] of defaultsOf(made.$type))
            if (made[property] === undefined) made[property] = Array.isArray(value) ? [] : value;
        return made;
    }

    function assign({ feature, operator, reference }: Into, value: unknown, piece: Leaf | Branch): void {
        const item = reference ? linker().buildReference(node, feature, piece, value as string) : value;
        if (operator === '+=') {
            node[feature] ??= [];
            const list = node[feature] as unknown[];
            if (isNode(item)) contain(item, feature, list.length);
            list.push(item);
        } else {
            if (isNode(item)) contain(item, feature);
            node[feature] = operator === '?=' ? true : item;
        }
    }

    function contain(inner: Made, feature: string, index?: number): void {
        inner.$container = node;
        inner.$containerProperty = feature;
        if (index !== undefined) inner.$containerIndex = index;
    }

    /** Comments that stand before an offset go beside the piece that they stand before. */
    function placeHidden(offset: number): void {
        const first = nextHidden;
        while (nextHidden < hidden.length && hidden[nextHidden]!.offset < offset) nextHidden++;
        if (first === nextHidden) return;
        let [around, at] = [branch, branch.content.length];
        while (at === 0 && around.container) {
            const outer = around.container as Branch;
            [around, at] = [outer, outer.content.indexOf(around)];
        }
        const comments = hidden.slice(first, nextHidden);
        for (const comment of comments) comment.container = around;
        around.content.splice(at, 0, ...comments);
    }
}

function put(piece: Leaf | Branch, into: Branch): void {
    piece.container = into;
    into.content.push(piece);
}

function isNode(value: unknown): value is Made {
    return typeof value === 'object' && value !== null && '$cstNode' in value;
}

/** By type of node, what its properties are where a text does not say. */
function defaultsBy(reflection: AstReflection): (type: string) => readonly (readonly [string, unknown])[] {
    const known = new Map<string, (readonly [string, unknown])[]>();
    return (type) => {
        let defaults = known.get(type);
        if (!defaults) {
            defaults = Object.values(reflection.getTypeMetaData(type).properties).flatMap(
                ({ name, defaultValue }) =>
                    defaultValue === undefined ? [] : [[name, defaultValue] as const],
            );
            known.set(type, defaults);
        }
        return defaults;
    };
}
