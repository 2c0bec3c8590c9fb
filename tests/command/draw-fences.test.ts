import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { marked } from 'marked';
import { describe, expect, test } from 'vitest';
import { fencesIn } from '../../language/src/command/draw-fences.ts';
import { folderOf, layback } from './layback.ts';

const notes = `# The day

\`\`\`spread
use "boats.spread"
spread early "Early <b>" {
    boat petrel
    port short corner { back 12 m }
}
\`\`\`

> words

~~~js
let a = 1;
~~~

  ~~~~ spread
  spread one "One" { sped 8 kn }
  spread two "Two" { speed 8 kn }
  ~~~~
`;
const boats = 'boat petrel "Petrel" {\n    length 9.9 m\n    beam 3.4 m\n}\n';

describe('layback draw of a Markdown text', () => {
    test('draws each fence beside it, and says what is wrong by the line of the text', () => {
        const cwd = folderOf({ 'notes.md': notes, 'boats.spread': boats });
        const { status, stdout, stderr } = layback(['draw', 'notes.md'], { cwd });
        expect([status, stdout]).toEqual([0, 'notes-1.svg\nnotes-2-one.svg\nnotes-2-two.svg\n']);
        expect(stderr).toMatch(/^layback: notes\.md:18: .*sped/);
        const drawn = readFileSync(join(cwd, 'notes-1.svg'), 'utf8');
        expect(drawn).toMatch(/^<svg /);
        expect(drawn).toContain('Petrel');
        expect(drawn).not.toContain('<b>');
        expect(readFileSync(join(cwd, 'notes.md'), 'utf8')).toBe(notes);
    });

    test('refuses what it cannot do, and writes nothing then', () => {
        const cwd = folderOf({
            'notes.md': notes,
            'bare.md': '# Nothing\n',
            'boats.md': `\`\`\`spread\n${boats}\`\`\`\n`,
        });
        for (const [args, says] of [
            [['bare.md'], 'There is no fence that begins with ```spread in bare.md.'],
            [['boats.md'], 'There is no spread in any fence of boats.md.'],
            [['gone.md'], 'gone.md'],
            [['notes.md', '-o', 'x.svg'], 'leave -o, -p and --view out'],
        ] as const) {
            const { status, stdout, stderr } = layback(['draw', ...args], { cwd });
            expect([status, stdout]).toEqual([2, '']);
            expect(stderr).toContain(says);
        }
        expect(existsSync(join(cwd, 'notes-1.svg'))).toBe(false);
    });
});

test('fences are those that a Markdown library finds', () => {
    for (const text of [
        notes,
        '````spread\n```spread\n````\n',
        '```spread\nnever closed',
        '    ```spread\n    code\n',
        '``` spread `x`\n',
    ]) {
        const theirs: string[] = [];
        marked.walkTokens(marked.lexer(text), (token) => {
            if (token.type === 'code' && /^spread(\s|$)/.test(token.lang ?? ''))
                theirs.push(flush(token.text));
        });
        expect(fencesIn(text).map((each) => flush(each.text))).toEqual(theirs);
    }
});

/** Without what stands before a line: the library leaves the indentation of a fence of tildes in its text. */
function flush(text: string): string {
    return text.replace(/^ +/gm, '').trimEnd();
}
