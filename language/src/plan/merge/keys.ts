import type { AstNode } from 'langium';

/** By which of their words entries of one kind are told apart; others by the word that they begin with. */
const tellingWords: Readonly<Record<string, readonly string[]>> = {
    Use: ['word', 'path'],
    PositionBlock: ['position'],
    Holder: ['word', 'position'],
    NamedPoint: ['word', 'name'],
    ExtraPosition: ['word', 'name'],
    Without: ['word', 'position'],
    Swap: ['word', 'first', 'second'],
    Drop: ['word', 'position'],
    Waive: ['word', 'rule', 'positions'],
    Order: ['word', 'what', 'positions'],
    Role: ['role', 'position'],
    Fallback: ['word', 'when'],
    RuleSetting: ['word', 'rule'],
    Setting: ['key'],
    AtMost: ['word', 'what'],
    Classes: ['word', 'lineClass'],
    Limits: ['word', 'upTo'],
    LinesTime: ['word', 'direction'],
    Hour: ['word', 'time'],
    Condition: ['word', 'sea', 'wind', 'side', 'height', 'strength', 'choice'],
    Joint: ['word', 'title'],
    Removal: ['word', 'property'],
};

/** What a plan may say any number of times: each is known by all that it says. */
const manyTimes: ReadonlySet<string> = new Set(['Event', 'Using', 'Unknown', 'Junk']);
const manyWords: ReadonlySet<string> = new Set([
    'note',
    'step',
    'say',
    'spare',
    'written',
    'hooks',
    'teasers',
]);

/**
 * What an entry is about: two of one key in one block are the same property, position or definition, whatever they say
 * of it.
 */
export function keyOf(node: AstNode): string {
    const own = node as AstNode & { kind?: string; name?: string; date?: string; word?: string };
    if (own.kind !== undefined && own.$container?.$type === 'Sheet')
        return `${own.kind} ${own.name ?? own.date ?? ''}`;
    if (manyTimes.has(own.$type) || (own.word !== undefined && manyWords.has(own.word))) return wordsOf(own);
    const telling = tellingWords[own.$type] ?? ['word'];
    const words = telling.map((property) => told(own[property as keyof AstNode])).filter(Boolean);
    return words.length === 0 ? wordsOf(own) : `${own.$type} ${words.join(' ')}`;
}

function told(value: unknown): string {
    if (Array.isArray(value)) return value.map(told).join(' ');
    if (typeof value === 'object' && value !== null && '$type' in value) return wordsOf(value as AstNode);
    return value === undefined ? '' : String(value);
}

function wordsOf(node: AstNode): string {
    return (node.$cstNode?.text ?? '').split(/\s+/).join(' ');
}

/** What a text defines, or what a block says, in the order of the text. */
export function entriesOf(node: AstNode): AstNode[] {
    const { entries, settings, version, uses, definitions, strays } = node as AstNode &
        Partial<Record<string, AstNode | readonly AstNode[]>>;
    const all = [entries, settings, version, uses, definitions, strays].flatMap(
        (part) => part ?? [],
    ) as AstNode[];
    return all.filter(({ $cstNode }) => $cstNode).sort((a, b) => a.$cstNode!.offset - b.$cstNode!.offset);
}
