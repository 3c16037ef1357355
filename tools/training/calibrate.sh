#!/usr/bin/env bash
# Calibrates landmark models on simulated films and shows, on other simulated films, how far the calibration keeps what it
# promises: limits are chosen on one split and frozen, spread, intervals and zones fitted on a second, tables made on a third.
#
#   tools/training/calibrate.sh PROGRAM MODELS OUT [--limit N] [--calibration N] [--validation N] [--size PX]
#                               [--seconds S] [--work DIR] [--keep]
#
# PROGRAM  the published program elbowassist (file or its folder); MODELS the folder of model folders; OUT gets
#          models/<name>/model.json, limits.json, tables/*.csv and *.json, bench.txt, calibrate.txt
# N        patients of a split, each with a lateral and an AP film (400, 400 and 400 if left out); seeds from 1000, 5000, 10000
# S        seconds for everything: validation ends early, so that what is there can be scored (no end if left out)
# --keep   packs labels and proposals as well (proposals.tar.xz), from which models calibrate and bench can go on elsewhere
#
# Uses every core. A run that was cut off goes on where it stopped when started again with the same --work.
set -euo pipefail
began=$(date +%s)
program=$1 models=$(readlink -f "$2") out=$3; shift 3
limit=400 calibration=400 validation=400 size=512 seconds=0 work=.artifacts/calibration keep=
while [ $# -gt 0 ]; do
  case "$1" in
    --limit) limit=$2; shift 2 ;;
    --calibration) calibration=$2; shift 2 ;;
    --validation) validation=$2; shift 2 ;;
    --size) size=$2; shift 2 ;;
    --seconds) seconds=$2; shift 2 ;;
    --work) work=$2; shift 2 ;;
    --keep) keep=1; shift ;;
    *) echo "calibrate.sh does not know $1; the options stand at the top of the script." >&2; exit 1 ;;
  esac
done
[ -d "$program" ] && program=$program/elbowassist
program=$(readlink -f "$program")
[ -x "$program" ] || { echo "There is no program at $program." >&2; exit 1; }
[ "$limit" -le 4000 ] && [ "$calibration" -le 5000 ] && [ "$validation" -le 10000 ] ||
  { echo "A split has at most 4000, 5000 and 10000 patients: its seeds end there." >&2; exit 1; }
export DOTNET_SYSTEM_GLOBALIZATION_INVARIANT=1 ELBOWASSIST_MODELS=$models
# What other models proposed is of no use.
work=$work/$(cat "$models"/*/*.onnx | sha256sum | cut -c1-12)
mkdir -p "$work" "$out"
chunk=100

left() { [ "$seconds" -eq 0 ] || [ $(($(date +%s) - began + $1)) -lt "$seconds" ]; }
say() { echo "$(($(date +%s) - began)) s: $*"; }

# films SPLIT SEED COUNT RESERVE: simulates and reads a split by chunks; stops early where RESERVE seconds would not be left
films() {
  local from=$2 end=$(($2 + $3)) count
  while [ "$from" -lt "$end" ]; do
    count=$((end - from < chunk ? end - from : chunk))
    if [ ! -e "$work/done.$1.$from.$count" ]; then
      left "$4" || { say "$1 ends early at seed $from"; return; }
      local folder=$work/$1.$from
      "$program" simulate --seed "$from" --count "$count" --size "$size" --out "$folder" > "$work/simulate.log"
      "$program" read "$folder" --only proposals --out "$work/proposals" > "$work/read.log"
      mkdir -p "$work/$1"
      mv "$folder"/*.truth.json "$work/$1"
      rm -r "$folder"
      touch "$work/done.$1.$from.$count"
    fi
    from=$((from + count))
  done
  say "$1: $(find "$work/$1" -name '*.truth.json' | wc -l) films"
}

films limit 1000 "$limit" 0
films calibration 5000 "$calibration" 0
"$program" models calibrate "$work/calibration" --choose-limits "$work/limit" --proposals "$work/proposals" --out "$out/models" \
  > "$out/calibrate.txt"
mv "$out/models/limits.json" "$out/limits.json"
say "calibrated"

rm -rf "$work/models"
cp -r "$models" "$work/models"
cp -r "$out/models/." "$work/models/"
# A chunk, the scoring and the packing must still fit.
films validation 10000 "$validation" 75
ELBOWASSIST_MODELS=$work/models ELBOWASSIST_LIMITS=$out/limits.json \
  "$program" bench "$work/validation" --proposals "$work/proposals" --tables "$out/tables" > "$out/bench.txt"
say "scored"
if [ -n "$keep" ]; then
  tar -C "$work" -c limit calibration validation proposals | xz -T0 -1 > "$out/proposals.tar.xz"
  say "packed"
fi
