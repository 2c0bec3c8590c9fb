import type { AstNode, CompositeCstNode, CstNode, GrammarAST, LeafCstNode, RootCstNode } from 'langium';
import type { Call, Take } from './table.ts';

/** A type of token. */
export interface Kind {
    readonly name: string;
    readonly number: number;
}

/** What of a text and its grammar a tree leans on. */
export interface Ground {
    /** Where each line begins. */
    readonly lines: readonly number[];
    /** An element of the grammar by its place; the grammar is loaded when somebody asks. */
    readonly element: (at: number) => GrammarAST.AbstractElement;
}

/** A piece of a text as it was understood: the toolkit's syntax tree, with less to carry and looked up later. */
abstract class Piece {
    container: CompositeCstNode | undefined = undefined;

    abstract readonly offset: number;
    abstract readonly end: number;
    abstract readonly step: Take | Call | undefined;

    get length(): number {
        return this.end - this.offset;
    }

    get root(): Root {
        let piece = this as unknown as CstNode;
        while (piece.container) piece = piece.container;
        return piece as Root;
    }

    get text(): string {
        return this.root.fullText.substring(this.offset, this.end);
    }

    get grammarSource(): GrammarAST.AbstractElement | undefined {
        return this.step && this.root.ground.element(this.step.at);
    }
}

/** A word, number or text; a comment, which has no step. */
export class Leaf extends Piece implements LeafCstNode {
    readonly offset: number;
    readonly end: number;
    readonly image: string;
    /** From 0. Nothing but a comment goes over more than one. */
    readonly startLine: number;
    tokenType: Kind;
    step: Take | undefined = undefined;

    constructor(offset: number, image: string, line: number, tokenType: Kind) {
        super();
        this.offset = offset;
        this.end = offset + image.length;
        this.image = image;
        this.startLine = line;
        this.tokenType = tokenType;
    }

    get endLine(): number {
        return this.startLine;
    }

    get hidden(): boolean {
        return this.step === undefined;
    }

    get astNode(): AstNode {
        return this.container!.astNode;
    }

    get range(): CstNode['range'] {
        const { lines } = this.root.ground;
        let endLine = this.startLine;
        while (lines[endLine + 1]! <= this.end) endLine++;
        return {
            start: { line: this.startLine, character: this.offset - lines[this.startLine]! },
            end: { line: endLine, character: this.end - lines[endLine]! },
        };
    }
}

/** What a rule made of a stretch of text. */
export class Branch extends Piece implements CompositeCstNode {
    readonly content: (Leaf | Branch)[] = [];
    readonly step: Call | undefined;
    /** What was made of exactly this; else it is part of what the branch around it became. */
    made: AstNode | undefined = undefined;

    constructor(step?: Call) {
        super();
        this.step = step;
    }

    get hidden(): boolean {
        return false;
    }

    get astNode(): AstNode {
        return this.made ?? this.container!.astNode;
    }

    set astNode(node: AstNode | undefined) {
        this.made = node;
    }

    get offset(): number {
        return this.first?.offset ?? 0;
    }

    get end(): number {
        return this.last?.end ?? 0;
    }

    get range(): CstNode['range'] {
        const { first, last } = this;
        const nowhere = { line: 0, character: 0 };
        return first && last
            ? { start: first.range.start, end: last.range.end }
            : { start: nowhere, end: nowhere };
    }

    private get first(): Leaf | Branch | undefined {
        return this.content.find(({ hidden }) => !hidden) ?? this.content[0];
    }

    private get last(): Leaf | Branch | undefined {
        return this.content.findLast(({ hidden }) => !hidden) ?? this.content.at(-1);
    }
}

/** A whole text. */
export class Root extends Branch implements RootCstNode {
    readonly fullText: string;
    readonly ground: Ground;

    constructor(text: string, ground: Ground) {
        super();
        this.fullText = text;
        this.ground = ground;
    }
}
