import { CompletionItemKind } from 'vscode-languageserver';
import { place } from '../snippets.ts';
import type { Offer } from './item.ts';

interface Starter {
    readonly label: string;
    readonly says: string;
    readonly lines: () => readonly string[];
}

/** Whole definitions to begin with. Numbers are made up, and there to be written over. */
const starters: readonly Starter[] = [
    {
        label: 'spread with four lines',
        says: 'Two corners and two riggers.',
        lines: () => [
            `/** ${place(1, 'Who it is for, and when.')} */`,
            `spread ${place(2, 'saturday')} "${place(3, 'Saturday')}" {`,
            `\tboat ${place(4, 'our-boat')}`,
            `\ttarget ${place(5, 'mahi')}`,
            `\tspeed ${place(6, '8')} kn`,
            `\tsea ${place(7, '0.6')} m`,
            `\tcrew ${place(8, '2')}`,
            '',
            `\tport short corner { outfit ${place(9, 'one')}  lure ${place(10, 'first')}  back wave 2 }`,
            `\tstarboard long corner { outfit ${place(11, 'two')}  lure ${place(12, 'second')}  back wave 3 }`,
            `\tstarboard short rigger { outfit ${place(13, 'three')}  lure ${place(14, 'third')}  back wave 4 }`,
            `\tport long rigger { outfit ${place(15, 'four')}  lure ${place(16, 'fourth')}  back wave 5 }`,
            '}',
        ],
    },
    {
        label: 'spread like another one',
        says: 'Says only what is different.',
        lines: () => [
            `/** ${place(1, 'What is different, and why.')} */`,
            `spread ${place(2, 'rough-day')} "${place(3, 'Rough day')}" like ${place(4, 'saturday')} {`,
            `\tspeed ${place(5, '7')} kn`,
            `\tsea ${place(6, '1.2')} m`,
            `\tport long rigger { back wave ${place(7, '4')} }`,
            '}',
        ],
    },
    {
        label: 'boat with outriggers',
        says: 'The measurements that most figures rest on.',
        lines: () => [
            `boat ${place(1, 'our-boat')} "${place(2, 'Our Boat')}" {`,
            `\tlength ${place(3, '9.8')} m`,
            `\twaterline ${place(4, '8.7')} m`,
            `\tbeam ${place(5, '3.4')} m`,
            `\tspeed ${place(6, '6')} kn to ${place(7, '10')} kn`,
            `\tfirst crest ${place(8, '6.2')} m at ${place(9, '8')} kn`,
            '\toutriggers {',
            `\t\tlength ${place(10, '6')} m`,
            `\t\tfoot { ahead ${place(11, '2.8')} m  out ${place(12, '1.6')} m  up ${place(13, '2.2')} m }`,
            `\t\trise ${place(14, '45')} deg`,
            `\t\tsweep ${place(15, '70')} deg`,
            `\t\thalyards ${place(16, '3.2')} m, ${place(17, '5.6')} m`,
            '\t}',
            `\tflat clip { ahead ${place(18, '0')} m  out ${place(19, '1.4')} m  up ${place(20, '0.9')} m }`,
            '}',
        ],
    },
    {
        label: 'rules of an event',
        says: 'What an event asks for; its own paper decides.',
        lines: () => [
            `/** ${place(1, 'Which event, and where its rules are to be read.')} */`,
            `rules ${place(2, 'our-event')} "${place(3, 'Our Event')}" {`,
            `\tat most ${place(4, '6')} lines`,
            `\tclass among ${place(5, '24')} kg, ${place(6, '37')} kg`,
            `\tlines in ${place(7, '07:30')}`,
            `\tlines out ${place(8, '16:00')}`,
            '}',
        ],
    },
    {
        label: 'log of a day',
        says: 'What happened, when, at which position.',
        lines: () => [
            `log ${place(1, today())} {`,
            `\tusing ${place(2, 'saturday')}`,
            `\tat ${place(3, '07:42')} bite ${place(4, 'port long rigger')} hooked released`,
            '}',
        ],
    },
];

export function starterOffers(): Offer[] {
    return starters.map(({ label, says, lines }, at) => {
        const snippet = lines().join('\n');
        return {
            label,
            kind: CompletionItemKind.Snippet,
            text: plain(snippet),
            snippet,
            detail: says,
            rank: 100 + at,
        };
    });
}

/** With what stands in its places, for an editor that has none. */
function plain(snippet: string): string {
    return snippet.replace(/\$\{\d+:((?:\\.|[^}])*)\}/g, (_, text: string) => text.replace(/\\(.)/g, '$1'));
}

/** The day that it is where one types. */
export function today(): string {
    const now = new Date();
    const two = (number: number) => String(number).padStart(2, '0');
    return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}
