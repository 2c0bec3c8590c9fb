import type { IToken, TokenType } from 'chevrotain';
import type { LangiumParser } from 'langium';
import { withMembers } from './lookahead.ts';

/** The inner hooks of the parser underneath that it looks for a way on by. */
interface RecoveringParser {
    readonly tokVector: readonly IToken[];
    readonly RULE_STACK: readonly number[];
    readonly RULE_STACK_IDX: number;
    readonly RULE_OCCURRENCE_STACK: readonly number[];
    LA(howFar: number): IToken;
    exportLexerState(): number;
    flattenFollowSet(): TokenType[];
    findReSyncTokenType(): TokenType;
    getFollowsForInRuleRecovery(type: TokenType, occurrence: number): TokenType[];
}

/** The part of the tree builder that puts comments into the tree, and takes out what came to nothing. */
interface TreeBuilder {
    readonly current: Branch;
    readonly rootNode: Branch;
    createLeafNode(token: IToken, hidden: boolean): Grown;
    addHiddenNodes(tokens: readonly IToken[]): void;
    removeNode(node: Grown): void;
}

/** As the tree is while it grows. */
interface Grown {
    container?: Branch;
}

interface Branch extends Grown {
    readonly content: Grown[];
}

/**
 * Looks for a way on once for faults of a kind: the parser underneath walks its grammar anew at every fault, reads
 * ahead to the end of the text for many, and searches its tree from the front for what it has just put at the end.
 * A megabyte of one kind of fault took it minutes. What it finds is the same.
 */
export function rememberRecovery(parser: LangiumParser): void {
    const inside = parser as unknown as { wrapper: RecoveringParser; nodeBuilder: TreeBuilder };
    rememberWays(inside.wrapper);
    searchFromTheEnd(inside.nodeBuilder);
}

/** Where the parser may get on, looked for from one place in the rules. */
interface Way {
    readonly byType: readonly (TokenType | undefined)[];
    tokens?: readonly IToken[];
    /** Between these two tokens of the text there is no other place to get on. */
    from: number;
    to: number;
}

function rememberWays(inner: RecoveringParser): void {
    const place = () => {
        const depth = inner.RULE_STACK_IDX + 1;
        return `${inner.RULE_STACK.slice(0, depth)};${inner.RULE_OCCURRENCE_STACK.slice(0, depth)}`;
    };
    const ways = new Map<string, Way>();
    inner.findReSyncTokenType = function () {
        const here = place();
        let way = ways.get(here);
        if (!way) {
            way = { byType: byNumber(this.flattenFollowSet()), from: 0, to: -1 };
            ways.set(here, way);
        }
        const at = this.exportLexerState();
        if (way.tokens !== this.tokVector || at < way.from || at > way.to) {
            let ahead = 1;
            while (!way.byType[this.LA(ahead).tokenTypeIdx]) ahead++;
            way.tokens = this.tokVector;
            way.from = at;
            way.to = at + ahead - 1;
        }
        return way.byType[this.LA(way.to - at + 1).tokenTypeIdx]!;
    };
    const follows = new Map<string, TokenType[]>();
    const original = inner.getFollowsForInRuleRecovery;
    inner.getFollowsForInRuleRecovery = function (type, occurrence) {
        const here = `${place()};${type.tokenTypeIdx};${occurrence}`;
        const found = follows.get(here) ?? original.call(this, type, occurrence);
        follows.set(here, found);
        return found;
    };
}

/** By the number of a token's type the first of these that it belongs to. */
function byNumber(types: readonly TokenType[]): (TokenType | undefined)[] {
    const first: (TokenType | undefined)[] = [];
    for (const type of types) for (const each of withMembers(type)) first[each] ??= type;
    return first;
}

function searchFromTheEnd(builder: TreeBuilder): void {
    builder.addHiddenNodes = function (tokens) {
        if (tokens.length === 0) return;
        const nodes = tokens.map((token) => this.createLeafNode(token, true));
        let { current } = this;
        if (current.content.length > 0) {
            put(nodes, current, current.content.length);
            return;
        }
        // Before the outermost block that begins with what comes next.
        while (current.container) {
            const { container } = current;
            const at = container.content.lastIndexOf(current);
            if (at > 0) {
                put(nodes, container, at);
                return;
            }
            current = container;
        }
        put(nodes, this.rootNode, 0);
    };
    builder.removeNode = (node) => {
        const siblings = node.container?.content;
        const at = siblings?.lastIndexOf(node) ?? -1;
        if (at >= 0) siblings!.splice(at, 1);
    };
}

/** One by one: of very many at once the engine would make as many arguments. */
function put(nodes: readonly Grown[], into: Branch, at: number): void {
    const behind = into.content.splice(at);
    for (const node of nodes) {
        node.container = into;
        into.content.push(node);
    }
    for (const node of behind) into.content.push(node);
}
