/** How much a search may do. */
export interface Limits {
  /** Most nodes looked at. */
  budget: number;
  cancelled?: () => boolean;
}

/** What one search has done of it. */
export interface Effort {
  nodes: number;
  /** Counts a node; true once the budget is spent or nobody waits any longer, and ever after. */
  spent(): boolean;
}

// How often a long search asks whether it is still wanted, in nodes.
const ASK = 1024;

export function effortWithin({ budget, cancelled }: Limits): Effort {
  let over = false;
  const effort = {
    nodes: 0,
    spent() {
      if (over) return true;
      effort.nodes++;
      over = effort.nodes > budget || (effort.nodes % ASK === 0 && cancelled?.() === true);
      return over;
    },
  };
  return effort;
}
