#!/usr/bin/env bash
# Trains on a machine with one or more GPUs and leaves everything worth keeping in $OUT, inside a time limit.
#
#   tools/training/run_on_gpu.sh FEED --seconds 580 [options of train.py, as --gpus 2, --resume DIR, --models lateral]
#
# FEED is the published feed program, or an archive (.tar.gz, .tar.xz, .gz, .xz) that holds it. --seconds bounds the
# whole script: unpacking, checking the feed, training, validation, export. Checkpoints stay in .artifacts/training,
# so that a later call on the same machine can --resume .artifacts/training.
# Results: <model>.pt (checkpoint), <model>-model.tar.gz (model folder), logs.tar.gz.
set -euo pipefail
began=$(date +%s)
here=$(cd "$(dirname "$0")" && pwd)
root=$(cd "$here/../.." && pwd)
work="$root/.artifacts/training"
out="${OUT:-$root/.artifacts/training/out}"
mkdir -p "$work" "$out"
export PYTHONUNBUFFERED=1 DOTNET_SYSTEM_GLOBALIZATION_INVARIANT=1 DOTNET_BUNDLE_EXTRACT_BASE_DIR="$work/extract"

feed="$1"; shift
seconds=580 device=gpu models=lateral,ap,view checkfilms=512 options=()
while [ $# -gt 0 ]; do
  case "$1" in
    --seconds) seconds="$2"; shift 2 ;;
    --device) device="$2"; options+=(--device "$2"); shift 2 ;;
    --models) models="$2"; options+=(--models "$2"); shift 2 ;;
    --check-films) checkfilms="$2"; shift 2 ;;
    *) options+=("$1"); shift ;;
  esac
done

# ---- the feed program
if [ -d "$feed" ]; then feed=$(find "$feed" -maxdepth 1 -type f \( -name '*.tar.*' -o -name '*.xz' -o -name '*.gz' -o -iname '*feed' \) | head -n 1); fi
case "$feed" in
  *.tar.gz | *.tar.xz | *.tgz) rm -rf "$work/feed"; mkdir -p "$work/feed"; tar -xf "$feed" -C "$work/feed"
    feed=$(find "$work/feed" -type f -iname '*feed' | head -n 1) ;;
  *.xz) xz -dc "$feed" > "$work/feed-program"; feed="$work/feed-program" ;;
  *.gz) gzip -dc "$feed" > "$work/feed-program"; feed="$work/feed-program" ;;
esac
[ -f "$feed" ] || { echo "There is no feed program at '$feed'." >&2; exit 2; }
if ! [ -x "$feed" ]; then [ "$feed" -ef "$work/feed-program" ] || cp "$feed" "$work/feed-program"; chmod +x "$work/feed-program"; feed="$work/feed-program"; fi
feed=$(readlink -f "$feed")

# ---- does it feed? (stops here, early, if not)
if [ "$device" = gpu ]; then nvidia-smi --query-gpu=name,memory.total --format=csv,noheader; fi
timeout 60 "${PYTHON:-python3}" "$here/check_feed.py" --device "$device" --films "$checkfilms" --models "$models" "$feed" \
  2>&1 | tee "$out/feed-check.log"
echo "feed checked after $(($(date +%s) - began)) s"

# ---- train, keeping the checkpoints of a run that is cut off
left=$((seconds - ($(date +%s) - began) - 8))
(while sleep 45; do cp -f "$work"/*.pt "$out"/ 2>/dev/null || true; done) &
keeper=$!
trap 'kill $keeper 2>/dev/null || true' EXIT
status=0
timeout -s TERM -k 45 "$((left + 5))" "${PYTHON:-python3}" "$here/train.py" --feed "$feed" --out "$work" \
  --minutes "$(awk "BEGIN{print $left/60}")" "${options[@]}" || status=$?

# ---- pack
kill $keeper 2>/dev/null || true
logs=()
mv -f "$out/feed-check.log" "$work/feed-check.log" && logs+=(feed-check.log)
for model in ${models//,/ }; do
  [ -f "$work/$model.pt" ] && cp -f "$work/$model.pt" "$out/"
  [ -d "$work/$model/model" ] && tar -czf "$out/$model-model.tar.gz" -C "$work/$model/model" --transform "s,^\.,$model," .
  for file in train.log loss.csv table.txt evaluation.json; do
    [ -f "$work/$model/$file" ] && logs+=("$model/$file")
  done
done
tar -czf "$out/logs.tar.gz" -C "$work" "${logs[@]}"
ls -l "$out"
echo "all done after $(($(date +%s) - began)) s, training ended with $status"
exit "$status"
