import { definitionWords } from './definition-words.ts';

/**
 * How deep in blocks a token stands. A definition or position whose `{` was forgotten counts as open from the line
 * after its first, so that what follows is not taken for strays; a `}` too many does not go below the ground.
 */
export class Depth {
    private depth = 0;
    private headed = false;
    private definition = '';
    /** Whether another definition may begin here without a line of its own. */
    private ready = false;

    get isOutside(): boolean {
        return this.depth === 0 && !this.headed;
    }

    enter(word: string, opens: boolean): void {
        if (word === '{') {
            this.depth++;
            this.headed = this.ready = false;
        } else if (word === '}') {
            this.depth = Math.max(0, this.depth - 1);
            this.ready = this.depth === 0;
        } else if (opens || this.ready) {
            if (opens && this.headed) this.depth++;
            this.headed = this.opensBlock(word);
            this.ready = false;
        } else {
            // Behind the one value of a heading.
            this.ready = this.depth === 0 && headings.has(this.definition);
        }
    }

    /** Roles and events of a log begin with positions too, and open nothing. */
    private opensBlock(word: string): boolean {
        if (this.depth > 0)
            return this.depth === 1 && this.definition === 'spread' && positionOpeners.has(word);
        this.definition = word;
        return definitionWords.has(word) && !headings.has(word);
    }
}

/** The words that open a line of a spread only to open a block: a position. */
export const positionOpeners: ReadonlySet<string> = new Set([
    'port',
    'starboard',
    'centre',
    'center',
    'shotgun',
    'stinger',
    'standby',
]);

/** What stands above the definitions, and has no block. */
const headings: ReadonlySet<string> = new Set(['use', 'layback']);
