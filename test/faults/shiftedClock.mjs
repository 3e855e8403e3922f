// Loaded before the server: at each SIGUSR2 its clock jumps to the next of the shifts, seconds.
const shifts = (process.env.FAULTS_CLOCK_SHIFTS ?? "").split(",").map(Number);
let shift = 0;
const True = Date;
globalThis.Date = class extends True {
  constructor(...given) {
    if (given.length === 0) super(True.now() + shift * 1_000);
    else super(...given);
  }
  // Own, since the framework copies what it finds on the class itself.
  static UTC = True.UTC;
  static parse = True.parse;
  static now() {
    return True.now() + shift * 1_000;
  }
};
process.on("SIGUSR2", () => {
  shift = shifts.shift() ?? 0;
});
