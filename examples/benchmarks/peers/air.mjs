// Dew point and wet bulb with the npm package psychrolib, over the same rooms.
import { createRequire } from "node:module";
const require = createRequire(process.cwd() + "/");
const loaded = require("psychrolib");
const psychrolib = loaded.psychrolib ?? loaded.default ?? loaded;
const version = require("psychrolib/package.json").version;
psychrolib.SetUnitSystem(psychrolib.SI);

const temp = (i) => 15 + (i % 16);
const rh = (i) => 0.3 + 0.01 * (i % 50);

function figure(job, call) {
  const answer = call(0);
  let n = 1;
  for (;;) {
    const start = process.hrtime.bigint();
    for (let i = 0; i < n; i++) call(i);
    if (process.hrtime.bigint() - start > 60000000n) break;
    n *= 2;
  }
  const times = [];
  for (let k = 0; k < 7; k++) {
    const start = process.hrtime.bigint();
    for (let i = 0; i < n; i++) call(i);
    times.push(Number(process.hrtime.bigint() - start) / n);
  }
  times.sort((a, b) => a - b);
  console.log(JSON.stringify({ job, side: `psychrolib ${version} (npm), node ${process.version}`, nanos: times[3], answer, repeats: 7 }));
}

figure("dew point", (i) => psychrolib.GetTDewPointFromRelHum(temp(i), rh(i)));
figure("wet bulb", (i) => psychrolib.GetTWetBulbFromRelHum(temp(i), rh(i), 101325));
