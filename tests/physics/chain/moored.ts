import type { ChainLine, ChainState } from '../../../language/src/physics/chain/run.ts';
import { runChain } from '../../../language/src/physics/chain/run.ts';
import { STANDARD_GRAVITY } from '../../../language/src/physics/constants.ts';
import { lineAtRest } from '../../../language/src/physics/line.ts';
import { layOut, type Manoeuvre } from '../../../language/src/physics/turn/manoeuvre.ts';

/** The parameters of one run of the mooring code. */
export interface Params {
    rho: number;
    d: number;
    rho_line: number;
    L: number;
    Cdn: number;
    Cdt: number;
    EA: number;
    M: number;
    Vol: number;
    CdA: number;
}

/** The line of a reference run, as we say it. */
export function lineOf(params: Params, height: number, speed: number, links = 20): ChainLine {
    const tow: ChainLine['tow'] = {
        sections: [
            {
                length: params.L,
                diameter: params.d,
                density: params.rho_line,
                modulus: params.EA / ((Math.PI / 4) * params.d ** 2),
            },
        ],
        lure: {
            dragArea: params.CdA,
            mass: params.M,
            weightInWater: (params.M - params.rho * params.Vol) * STANDARD_GRAVITY,
        },
        normalDrag: params.Cdn,
        tangentialDrag: params.Cdt,
        airDrag: false,
    };
    const rest = lineAtRest({ ...tow, towPoint: [0, 0, height], speed, length: { out: params.L } });
    if (rest.kind !== 'at-rest') throw new Error(rest.kind);
    return { towPoint: [0, 0, height], layback: -rest.lure[0], tow, links };
}

/** All states of a run, or the reason there are none. */
export function statesOf(line: ChainLine, manoeuvre: Manoeuvre, times: readonly number[]) {
    const run = runChain(line, layOut(manoeuvre)!, times);
    const states: ChainState[] = [];
    for (;;) {
        const { value, done } = run.next();
        if (!done) states.push(value);
        else if (value.kind !== 'done') throw new Error(JSON.stringify(value));
        else return { states, end: value };
    }
}
