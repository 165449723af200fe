/**
 * A running sum that keeps the low bits (Neumaier's variant of Kahan summation, 1974), so that a
 * ledger of many thousand small volumes balances to the last digits.
 */
export class Sum {
  private total = 0;
  private lost = 0;

  /** Adds one term. */
  add(term: number): void {
    const next = this.total + term;
    this.lost +=
      Math.abs(this.total) >= Math.abs(term) ? this.total - next + term : term - next + this.total;
    this.total = next;
  }

  /** The sum so far. */
  get value(): number {
    return this.total + this.lost;
  }
}
