import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

/**
 * Writes a made-up team's folder of many plans, about a hundred lines each: the same for the same numbers.
 *
 * @param {string} folder  empty or not there
 * @param {number} files  plans, beside the boat and the tackle
 * @returns {{ files: number, lines: number }}
 */
export function writeCorpus(folder, files) {
    mkdirSync(join(folder, 'plans'), { recursive: true });
    const texts = new Map([
        ['boat.spread', boat],
        ['tackle.spread', tackle()],
    ]);
    for (let n = 1; n <= files; n++) {
        texts.set(`plans/${String(n).padStart(4, '0')}.spread`, planFile(n));
    }
    let lines = 0;
    for (const [path, text] of texts) {
        writeFileSync(join(folder, path), text);
        lines += text.split('\n').length - 1;
    }
    return { files: texts.size, lines };
}

const boat = `boat heron "Heron" {
    length 9.8 m
    waterline 8.7 m
    beam 3.4 m
    speed 6 kn to 10 kn
    first crest 6.2 m at 8 kn
    outriggers {
        length 6 m
        foot { ahead 2.8 m  out 1.6 m  up 2.2 m }
        rise 45 deg
        sweep 70 deg
        halyards 3.2 m, 5.6 m
    }
    flat clip { ahead 0 m  out 1.4 m  up 0.9 m }
    holder port short corner { ahead 0.4 m  out 1.4 m  up 0.9 m  lean 15 deg }
    holder starboard long corner { ahead 0.4 m  out 1.4 m  up 0.9 m  lean 15 deg }
    holder port long rigger { ahead 1.1 m  out 1.5 m  up 1 m  lean 15 deg }
    holder starboard short rigger { ahead 1.1 m  out 1.5 m  up 1 m  lean 15 deg }
}
`;

const heads = ['plunger', 'pusher', 'slant', 'jet'];
const places = ['port short corner', 'starboard long corner', 'starboard short rigger', 'port long rigger'];

function tackle() {
    const outfit = (n) => `
outfit fifty-${n} "Fifty ${n}" {
    rod { length 1.75 m  tip 1.3 m  butt 0.45 m }
    reel {
        spool { full 100 mm  arbor 48 mm }
        capacity 800 m of 0.71 mm
    }
    line nylon { diameter 0.71 mm  class 24 kg  breaks 22.6 kg }
    double { length 4 m }
    drag { set 6 kg  hooked 7 kg  full 8 kg }
    tested 2026-03-01 by "R."
}
`;
    const lure = (n) => `
lure lure-${n} "Lure ${n}" ${heads[n % 4]} {
    length ${320 - 10 * n} mm
    head ${44 - n} mm
    weight ${280 - 12 * n} g
    pull ${(2.6 - 0.1 * n).toFixed(1)} kg at 8 kn
    runs 6 kn to 9 kn
    hooks single { gap 48 mm  length 92 mm  point up }
    leader nylon { diameter 1.6 mm  breaks 113 kg  length 4.2 m }
}
`;
    const count = (n, text) => Array.from({ length: n }, (_, i) => text(i + 1)).join('');
    return count(8, outfit) + count(12, lure);
}

function planFile(n) {
    const spread = (letter, like) => `
/** Plan ${n}${letter}: settled weather, two on deck besides the helm. */
spread plan-${n}-${letter} "Plan ${n} ${letter}"${like ? ` like plan-${n}-${like}` : ''} {
    boat heron
    date 2026-03-${String(1 + (n % 28)).padStart(2, '0')}
    speed ${7 + (n % 3)} kn
    sea 0.${4 + (n % 5)} m
    crew 3
    turn within ${80 + 10 * (n % 7)} m
${places
    .map(
        (place, i) => `
    ${place} {
        outfit fifty-${i + 1 + ((n + i) % 2) * 4}
        lure lure-${1 + 3 * i + (n % 3)}
        back wave ${2 + i}
    }`,
    )
    .join('\n')}
}
`;
    return `use "../boat.spread"\nuse "../tackle.spread"\n${spread('a')}${spread('b', 'a')}${spread('c', 'a')}`;
}
