// Solves an LP-format file with HiGHS: node highs.js FILE SECONDS
const fs = require('fs');
(async () => {
  const highs = await require('highs')();
  const text = fs.readFileSync(process.argv[2], 'utf8');
  const begin = Date.now();
  const r = highs.solve(text, { time_limit: +process.argv[3], output_flag: false, mip_rel_gap: 0 });
  console.log(JSON.stringify({ status: r.Status, cost: r.ObjectiveValue, seconds: (Date.now() - begin) / 1000 }));
})();
