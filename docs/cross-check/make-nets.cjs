// Draws small two-level noisy-OR nets from a fixed seed, has bayesjs (a general-purpose library, junction tree) infer them, and writes a JSON
// line each: the model in the format that ShedBot.Reasoning.Exchange.ModelLine reads, and `posterior_given_trouble` as bayesjs has it.
'use strict';
const { infer } = require('bayesjs');

let state = 20250301;
function random() { // Park and Miller's generator: the same numbers on every machine
  state = (state * 48271) % 2147483647;
  return state / 2147483647;
}
const between = (low, high) => low + (high - low) * random();
const upTo = n => Math.floor(random() * n);

// The rows of a table over yes/no parents: every combination with P(yes) by a function of which parents are there.
function table(parents, yes) {
  if (parents.length === 0) return { yes: yes({}), no: 1 - yes({}) };
  return Array.from({ length: 1 << parents.length }, (_, row) => {
    const when = Object.fromEntries(parents.map((p, i) => [p, (row >> i) & 1 ? 'yes' : 'no']));
    const p = yes(when);
    return { when, then: { yes: p, no: 1 - p } };
  });
}
const node = (id, parents, yes) => ({ id, states: ['yes', 'no'], parents, cpt: table(parents, yes) });

function draw(number) {
  const faults = Array.from({ length: 3 + upTo(4) }, (_, i) => ({ id: `f${i}`, prior: between(0.02, 0.4) }));
  const checks = Array.from({ length: 2 + upTo(4) }, (_, i) => {
    const shown = faults.filter(() => random() < 0.4).slice(0, 3);
    return {
      id: `c${i}`, cost: 1, leak: between(0.01, 0.2),
      p_yes: Object.fromEntries(shown.map(f => [f.id, between(0.3, 0.98)])),
      err: { fp: between(0, 0.15), fn: between(0, 0.15) },
    };
  });
  const answers = Object.fromEntries(checks.map(c => [c.id, ['yes', 'no', 'unsure'][upTo(3)]]));

  const network = {};
  for (const f of faults) network[f.id] = node(f.id, [], () => f.prior);
  for (const c of checks) {
    network[c.id] = node(c.id, Object.keys(c.p_yes), when =>
      1 - Object.entries(c.p_yes).reduce((quiet, [f, s]) => quiet * (when[f] === 'yes' ? 1 - s : 1), 1 - c.leak));
    network[`said_${c.id}`] = node(`said_${c.id}`, [c.id], when => (when[c.id] === 'yes' ? 1 - c.err.fn : c.err.fp));
  }
  // Somebody has come with a trouble: at least one fault. This node also ties the net together.
  network.trouble = node('trouble', faults.map(f => f.id), when => (Object.values(when).includes('yes') ? 1 : 0));

  const given = { trouble: 'yes' };
  for (const [c, answer] of Object.entries(answers)) if (answer !== 'unsure') given[`said_${c}`] = answer;
  return {
    id: `net-${number}`,
    model: { faults, checks, repairs: [], clusters: [], help: { cost: 60 } },
    answers,
    posterior_given_trouble: Object.fromEntries(faults.map(f => [f.id, infer(network, { [f.id]: 'yes' }, { ...given })])),
  };
}

for (let number = 1; number <= 60; number++) console.log(JSON.stringify(draw(number)));
