#!/usr/bin/env python3
"""Tables of docs/figures.md from lines of bench-schedule.

usage: schedule_table.py BEST_KNOWN.csv RESULTS.jsonl [--at SECONDS] [--each]

BEST_KNOWN.csv has columns family, set, file, status (closed, open, infeasible, unknown), lb, ub. The value at SECONDS is
the last of the trace up to then. Gap: (value - ub) / ub; negative where ours is better than the best value known.
"""
import argparse
import csv
import json
import os
import statistics


def main():
    parser = argparse.ArgumentParser()
    parser.add_argument("best")
    parser.add_argument("results")
    parser.add_argument("--at", type=float)
    parser.add_argument("--each", action="store_true")
    args = parser.parse_args()
    best = {}
    with open(args.best, newline="") as file:
        for row in csv.DictReader(file):
            best[os.path.basename(row["file"]), os.path.basename(os.path.dirname(row["file"]))] = row
    sets = {}
    with open(args.results) as file:
        for text in file:
            line = json.loads(text)
            path = line["instance"]
            row = best[os.path.basename(path), os.path.basename(os.path.dirname(path))]
            sets.setdefault((row["family"], row["set"]), []).append((row, line))
    print("| set | instances | proved | infeasible, proved | nothing found | mean gap % | worst gap % | bound gap % "
          "| first s, median / worst |")
    print("|---|---|---|---|---|---|---|---|---|")
    for (family, name), rows in sorted(sets.items()):
        gaps, firsts, bounds = [], [], []
        proved = infeasible = nothing = 0
        for row, line in rows:
            trace = [v for s, v in line["trace"] if args.at is None or s <= args.at]
            value = trace[-1] if trace else None
            within = args.at is None or line["total_s"] <= args.at
            if line["status"] == "Infeasible" and within:
                infeasible += 1
                if row["status"] not in ("infeasible", "unknown"):
                    print("WRONG", line["instance"], "is said to be infeasible")
                continue
            if value is None:
                nothing += row["status"] != "infeasible"
                continue
            firsts.append(line["trace"][0][0])
            proved += line["status"] == "Proven" and within
            if row["ub"]:
                gaps.append(100.0 * (value - int(row["ub"])) / int(row["ub"]))
                if row["status"] == "closed" and value < int(row["ub"]):
                    print("WRONG", line["instance"], value, "is better than the optimum", row["ub"])
                if line["bound"] and line["bound"] > int(row["ub"]):
                    print("WRONG", line["instance"], "bound", line["bound"], "above", row["ub"])
            if line["bound"]:
                bounds.append(100.0 * (value - line["bound"]) / value)
            if args.each:
                print("   ", line["instance"], line["status"], value, "bound", line["bound"], "best", row["lb"],
                      row["ub"], f"{gaps[-1]:.2f} %" if row["ub"] else "")
        mean = f"{statistics.mean(gaps):.2f}" if gaps else "-"
        worst = f"{max(gaps):.2f}" if gaps else "-"
        bound = f"{statistics.mean(bounds):.2f}" if bounds else "-"
        first = f"{statistics.median(firsts):.3f} / {max(firsts):.3f}" if firsts else "-"
        print(f"| {family} {name} | {len(rows)} | {proved} | {infeasible} | {nothing} | {mean} | {worst} | {bound} | {first} |")


if __name__ == "__main__":
    main()
