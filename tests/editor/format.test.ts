import { describe, expect, test } from 'vitest';
import type { Sheet } from '../../language/grammar/generated/ast.ts';
import { applyChanges, format, formatChanges, formatTyped } from '../../language/src/editor/format.ts';
import { createServices } from '../../language/src/plan/services.ts';

const services = createServices();
const formatted = (text: string) => format(text, services);
const source = (text: string) => ({ text, parsed: services.parser.LangiumParser.parse<Sheet>(text) });

/** Formats the lines between two `|` marks. */
function formattedRange(marked: string): string {
    const [before, inside, after] = marked.split('|') as [string, string, string];
    const text = before + inside + after;
    const range = { start: before.length, end: before.length + inside.length };
    return applyChanges(text, formatChanges(source(text), services, range));
}

/** What becomes of a text right after a `}` or a line break was typed; editors indent by themselves first. */
function typed(marked: string): string {
    const offset = marked.indexOf('|');
    const text = marked.replace('|', '');
    const key = text[offset - 1] === '}' ? '}' : '\n';
    return applyChanges(text, formatTyped(source(text), services, offset, key));
}

describe('one property a line', () => {
    test('four spaces a level, no columns, one space between words', () => {
        expect(
            formatted(`spread calm   "Calm"{
  boat     sandpiper
speed    8kn
      sea 0.5 m
   port short corner {
outfit fifty-1
lure   ink
back   wave   2
clip 3.4 kg } }`),
        ).toBe(`spread calm "Calm" {
    boat sandpiper
    speed 8 kn
    sea 0.5 m
    port short corner {
        outfit fifty-1
        lure ink
        back wave 2
        clip 3.4 kg
    }
}
`);
    });

    test('but a block of up to three that fits in 80 columns is one line, two spaces between them', () => {
        expect(formatted('rod a {\n length 1.75 m\n tip 1.30 m\n\n butt 0.45 m\n}\n')).toBe(
            'rod a { length 1.75 m  tip 1.30 m  butt 0.45 m }\n',
        );
        expect(formatted('reel b { spool { full 100 mm arbor 48 mm } capacity 800 m of 0.71 mm }')).toBe(
            'reel b { spool { full 100 mm  arbor 48 mm }  capacity 800 m of 0.71 mm }\n',
        );
    });

    test('80 columns fit, 81 do not', () => {
        const note = (length: number) =>
            `rod a { note "${'x'.repeat(length - 'rod a { note "" }'.length)}" }`;
        expect(formatted(note(80))).toBe(`${note(80)}\n`);
        expect(formatted(note(81))).toMatch(/^rod a \{\n {4}note "x+"\n\}\n$/);
    });

    test('an empty block closes at once', () => {
        expect(formatted('spread b like a {\n\n}')).toBe('spread b like a {}\n');
    });

    test('numbers and units keep their spelling, with one space between them', () => {
        expect(formatted('line a { class 24.0kg  breaks 50lb  stretch 18% }')).toBe(
            'line a { class 24.0 kg  breaks 50 lb  stretch 18 % }\n',
        );
    });
});

describe('too wide for a line', () => {
    test('a waiver breaks before its reason', () => {
        expect(
            formatted(
                'spread a { waive drag-untested on starboard short rigger because "tested on the morning, by hand" until 2026-02-15 }',
            ),
        ).toBe(`spread a {
    waive drag-untested on starboard short rigger
        because "tested on the morning, by hand" until 2026-02-15
}
`);
    });

    test('a list breaks behind commas, an event before what happened', () => {
        expect(
            formatted(`spread a { order set port long rigger, starboard long rigger, port short corner, shotgun }
log 2026-02-14 { at 07:42 bite port long rigger hooked released white-marlin 28 kg fought 22 min by "Noor" }`),
        ).toBe(`spread a {
    order set port long rigger, starboard long rigger, port short corner,
        shotgun
}

log 2026-02-14 {
    at 07:42 bite port long rigger hooked released white-marlin 28 kg
        fought 22 min by "Noor"
}
`);
    });

    test('a fish does not come to open a line, and its weight stays with it', () => {
        expect(
            formatted(
                'log 2026-02-14 { at 10:40 bite starboard short rigger lost "clip opened, and no hook" white-marlin 28 kg speed 8 kn }',
            ),
        ).toBe(`log 2026-02-14 {
    at 10:40 bite starboard short rigger
        lost "clip opened, and no hook" white-marlin 28 kg speed 8 kn
}
`);
    });

    test('a rule that is called `because` does not come to open a line', () => {
        const text = `spread a {
    waive because on starboard short rigger
        because "a reason that fills the rest of the line and more of it"
}
`;
        expect(formatted(text)).toBe(text);
    });
});

describe('blank lines', () => {
    test('one stays where there was one or more, none at the edges of a block or file', () => {
        expect(
            formatted('\n\nspread a {\n\n\n    speed 8 kn\n\n\n\n    // why\n    sea 1 m\n\n}\n\n\n'),
        ).toBe('spread a {\n    speed 8 kn\n\n    // why\n    sea 1 m\n}\n');
    });

    test('one stands between definitions, but definitions of one line may stand together', () => {
        expect(
            formatted('layback 1\nuse "a.spread"\nrod a {}\nrod b {}\n\nrod c {}\n// d\nrod d {\n// e\n}\n'),
        ).toBe('layback 1\nuse "a.spread"\n\nrod a {}\nrod b {}\n\nrod c {}\n\n// d\nrod d {\n    // e\n}\n');
    });
});

describe('comments', () => {
    test('stay on the line of what they follow, or above what they precede', () => {
        expect(
            formatted(`/** For calm days.
      * Two on deck. */
spread a { // first
speed 8 kn       // through the water
/* later */ sea 1 m /* as forecast */
          // the end
} // done
// more`),
        ).toBe(`/** For calm days.
 * Two on deck. */
spread a {  // first
    speed 8 kn  // through the water
    /* later */ sea 1 m  /* as forecast */
    // the end
}  // done
// more
`);
    });

    test('keep a block open and a property whole', () => {
        expect(formatted('rod a { /* old */ tip /* to the ring */ 1.3 m }')).toBe(
            'rod a {\n    /* old */ tip /* to the ring */ 1.3 m\n}\n',
        );
    });

    test('keep their inner lines, stars below each other', () => {
        expect(
            formatted('spread a {\n/* one\n* two\n   * three */\nspeed 8 kn\n/* as\n  it is  \n */\n}'),
        ).toBe(
            'spread a {\n    /* one\n     * two\n     * three */\n    speed 8 kn\n    /* as\n  it is\n */\n}\n',
        );
    });
});

describe('words that depend on their line', () => {
    test('a word that would become a unit stays on its own line', () => {
        const text = 'rules a {\n    rule stagger {\n        most 3\n        slack 4 mm\n    }\n}\n';
        expect(formatted(text)).toBe(text);
    });

    test('a name that was on the next line joins its word', () => {
        expect(formatted('outfit a {\n rod\n bent-butt\n }')).toBe('outfit a { rod bent-butt }\n');
    });
});

describe('text with errors', () => {
    test('the broken definition stays as it is, the others are formatted', () => {
        expect(
            formatted(
                'rod a {tip 1.3 m}\n\nspread   b { speed\n  crew   3 }\n\nrod c {tip 1.3 m}\n\n\nrod d {tip 1 m}',
            ),
        ).toBe(
            'rod a {tip 1.3 m}\n\nspread   b { speed\n  crew   3 }\n\nrod c { tip 1.3 m }\n\nrod d { tip 1 m }\n'.replace(
                'rod a {tip 1.3 m}',
                'rod a { tip 1.3 m }',
            ),
        );
    });

    test('a misspelt word and its values stay as they are, in a block that keeps its shape', () => {
        expect(formatted('lure a { lenth   330 mm  head   46 mm }')).toBe(
            'lure a { lenth   330 mm  head   46 mm }\n',
        );
        expect(formatted('lure a {\nlenth   330 mm\nhead   46 mm }')).toBe(
            'lure a {\n    lenth   330 mm\n    head 46 mm\n}\n',
        );
    });

    test('a text without its closing quote swallows nothing', () => {
        const text = 'rod a { note "short\n}\n';
        expect(formatted(text)).toBe(text);
    });
});

describe('files', () => {
    test('that end their lines in CR LF keep that; others get LF', () => {
        expect(formatted('rod a {\r\n// b\r\n}\r\n')).toBe('rod a {\r\n    // b\r\n}\r\n');
        expect(formatted('rod a {\r\n// b\n}\r\n')).toBe('rod a {\n    // b\n}\n');
    });

    test('keep a byte order mark, and may be empty', () => {
        expect(formatted('\uFEFF  rod a {}')).toBe('\uFEFFrod a {}\n');
        expect(formatted('  \n ')).toBe('');
        expect(formatted('\uFEFF')).toBe('\uFEFF');
    });
});

describe('a range', () => {
    test('changes its lines and no others', () => {
        expect(
            formattedRange(
                'spread a {\n  speed   8 kn\n  sea|   1 m\n  cr|ew   3\n  turn within   90 m\n}\n',
            ),
        ).toBe('spread a {\n  speed   8 kn\n    sea 1 m\n    crew 3\n  turn within   90 m\n}\n');
    });

    test('changes a block as a whole that becomes one line', () => {
        expect(formattedRange('rod   a {}\nrod b {\n  |tip|   1.3 m\n  butt 0.4 m\n}\nrod   c {}\n')).toBe(
            'rod   a {}\nrod b { tip 1.3 m  butt 0.4 m }\nrod   c {}\n',
        );
    });

    test('yields no change where all is well', () => {
        expect(formatChanges(source('rod a { tip 1.3 m }\n'), services)).toEqual([]);
    });
});

describe('while typing', () => {
    test('a line break indents the new line, though the block is not closed yet', () => {
        expect(typed('spread a {\n|')).toBe('spread a {\n    ');
        expect(typed('spread a {\n    shotgun {\n|\n    }\n}')).toBe(
            'spread a {\n    shotgun {\n        \n    }\n}',
        );
        expect(typed('spread a {\n    shotgun {\n|}')).toBe('spread a {\n    shotgun {\n    }');
        expect(typed('spread a {\n}\n    |')).toBe('spread a {\n}\n');
    });

    test('a closing brace formats its block and nothing else', () => {
        expect(typed('rod   a {}\nrod b {  tip   1.3 m }|\n')).toBe('rod   a {}\nrod b { tip 1.3 m }\n');
        expect(typed('rod   a {} }|')).toBe('rod   a {} }');
    });
});

test('time grows with length, no faster', () => {
    const spread = (index: number) => `spread s${index} "Calm" {
speed   8 kn
    port short corner {
        outfit fifty-1 // tested
        lure ink-pusher
        back wave 2
        clip 3.4 kg }
    starboard short rigger { outfit fifty-4  lure green-jet back 34 m }
}
`;
    const text = (lines: number) =>
        Array.from({ length: lines / 10 }, (_, index) => spread(index)).join('\n');
    const [short, long] = [text(10_000), text(40_000)];
    // The time of the processor, and the best of five, taken in turns: other work on the machine counts less.
    const best = { short: Infinity, long: Infinity };
    for (let round = 0; round < 5; round++) {
        best.short = Math.min(best.short, processorTime(short));
        best.long = Math.min(best.long, processorTime(long));
    }
    // Four times the text, so a square would be sixteen times the time.
    expect(best.long / best.short).toBeLessThan(9);
}, 60_000);

function processorTime(text: string): number {
    const start = process.cpuUsage();
    format(text, services);
    return process.cpuUsage(start).user;
}
