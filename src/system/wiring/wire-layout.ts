import type { Layout } from '../channel';
import type { ProcessorSheet } from '../sheet/processor-sheet';
import { assignRoles } from './assign-roles';
import { describeConflict, describeUnnamed } from './describe-conflict';
import { findCores } from './find-core';
import { nearestLayouts } from './nearest-layouts';
import { searchWiring } from './search-wiring';
import { stateProblem } from './state-problem';
import type { WiredOutput, Wiring } from './wiring';

/**
 * Which speaker goes on which output of a processor, or why it cannot be and which layouts can.
 * Every rule comes from the sheet; the same layout and sheet always give the same answer. Throws
 * RangeError when a rule names an output the sheet has not, which a parsed sheet never does.
 */
export function wireLayout(layout: Layout, sheet: ProcessorSheet): Wiring {
  const outputs = findWiring(layout, sheet);
  if (outputs) return { wired: true, outputs };
  const assigned = assignRoles(layout, sheet.heightNaming);
  const problem = stateProblem(
    assigned.roles.map(({ role }) => role),
    sheet,
  );
  return {
    wired: false,
    conflicts: [
      ...(assigned.unnamed.length > 0 ? [describeUnnamed(assigned, sheet)] : []),
      ...findCores(problem).map((core) => describeConflict(core, problem, assigned.roles, sheet)),
    ],
    nearest: nearestLayouts(layout, (candidate) => findWiring(candidate, sheet) !== null),
  };
}

function findWiring(layout: Layout, sheet: ProcessorSheet): WiredOutput[] | null {
  const { roles, unnamed } = assignRoles(layout, sheet.heightNaming);
  if (unnamed.length > 0) return null;
  const places = searchWiring(
    stateProblem(
      roles.map(({ role }) => role),
      sheet,
    ),
  );
  if (!places) return null;
  return sheet.outputs.flatMap(({ id, name }, output) =>
    roles.flatMap(({ channel, role }, index) =>
      places[index] === output ? [{ output: id, name, channel, role }] : [],
    ),
  );
}
