import type { Files } from './client.ts';

/** A boat and some tackle, as small as a plan can be checked with. All invented. */
export const boats = `/** Twin diesels, wide cockpit. */
boat petrel "Petrel" {
    length 9.9 m
    waterline 8.9 m
    beam 3.4 m
    speed 6 kn to 10 kn
    first crest 6.3 m at 8 kn
    waves up to 0.6 m
    outriggers {
        length 6.4 m
        foot { ahead 2.8 m  out 1.6 m  up 2.2 m }
        rise 45 deg
        sweep 70 deg
        halyards 3.2 m, 6 m
    }
    flat clip { ahead 0.2 m  out 1.4 m  up 1 m }
    holder port corner { ahead 0.4 m  out 1.4 m  up 1 m  lean 15 deg }
    holder port rigger { ahead 1.1 m  out 1.5 m  up 1 m  lean 15 deg }
    point bridge { ahead 2.6 m  out 1.2 m  up 4 m }
}
`;

const outfit = (name: string, title: string) => `
outfit ${name} "${title}" {
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

const lure = (name: string, title: string, head: string, length: number) => `
lure ${name} "${title}" ${head} {
    length ${length} mm
    head ${Math.round(length / 8)} mm
    weight ${length - 40} g
    pull 2.4 kg at 8 kn
    runs 6 kn to 9 kn
    hooks single { gap 48 mm  length 92 mm  point up }
    leader nylon { diameter 1.6 mm  breaks 113 kg  length 4.2 m }
}
`;

export const tackle = `// Everything that is on board.
${outfit('red', 'Red')}${outfit('blue', 'Blue')}${outfit('green', 'Green')}
/** Throws a long smoke trail. */${lure('broom', 'Broom', 'pusher', 320)}${lure('wick', 'Wick', 'plunger', 280)}${lure('sliver', 'Sliver', 'jet', 240)}
method soft "Soft strike" like drop-back {
    set 2.4 kg
    loop 1.2 m
}
`.replace('// Everything', 'use "layback:methods"\n\n// Everything');

export const plan = `use "layback:species"
use "../boats.spread"
use "../tackle.spread"

/** Two hands, a quiet morning. */
spread morning "Quiet morning" {
    boat petrel
    target white-marlin
    date 2026-03-02
    speed 8 kn
    sea 0.2 m
    crew 2
    turn within 90 m

    port short corner {
        outfit red
        lure broom
        back wave 2
        clip 4 kg
    }
    starboard short rigger { outfit blue  lure wick  back wave 4 }
    port long rigger {
        outfit green
        lure sliver
        back 45 m
    }
}

/** When it blows. */
spread breeze "Fresh breeze" like morning {
    speed 7 kn
    sea 0.9 m
    starboard short rigger { back wave 5 }
    without port long rigger
}
`;

/** A team's folder: inventory above, plans below. */
export const team: Files = {
    'boats.spread': boats,
    'tackle.spread': tackle,
    'plans/march.spread': plan,
};

/** The same with every line ended by CR LF. */
export const withCrLf = (text: string) => text.replaceAll('\n', '\r\n');
