#!/bin/bash
# Whole-process time of reading one CSV of 1.08 million rows x 7 columns: strict read into a Tablesaw table against
# pandas.read_csv, in turns, medians of 5.
#   usage: compare.sh JAR [WORK_FOLDER] [ROWS]     JAR: spanwright.jar; needs a JDK, python3 with pandas
# JAVA_FLAGS are those of a short-lived process: one collector, one compiler, large arrays made where they stay, large
# pages, classes from an archive that is made first (pandas has its compiled modules likewise). JAVA_FLAGS=" " measures
# without them.
set -e
here=$(cd "$(dirname "$0")" && pwd); jar=$1; work=${2:-$(mktemp -d)}; rows=${3:-1080000}
flags=${JAVA_FLAGS:-"-XX:+UseSerialGC -XX:TieredStopAtLevel=1 -XX:PretenureSizeThreshold=1m -XX:+UseTransparentHugePages"}; python=${PYTHON:-python3}
mkdir -p "$work/classes"; file=$work/readings-$rows.csv
[ -e "$file" ] || $python "$here/make_readings.py" $rows "$file"
javac -cp "$jar" -d "$work/classes" "$here/ReadTable.java"
(cd "$work/classes" && jar cf "$work/bench.jar" ReadTable.class)
cp="$jar:$work/bench.jar"
java $flags -XX:ArchiveClassesAtExit="$work/classes.jsa" -cp "$cp" ReadTable "$file" > /dev/null 2>&1
java $flags -cp "$cp" ReadTable "$file" > "$work/ours" 2> /dev/null
$python "$here/read_with_pandas.py" "$file" > "$work/theirs"
cmp "$work/ours" "$work/theirs" && echo "same rows and sum: $(cat "$work/ours")"
for i in 1 2 3 4 5; do
  /usr/bin/time -a -o "$work/ours.t" -f "%e %U %S %M" \
    java $flags -XX:SharedArchiveFile="$work/classes.jsa" -cp "$cp" ReadTable "$file" > /dev/null 2>&1
  /usr/bin/time -a -o "$work/theirs.t" -f "%e %U %S %M" $python "$here/read_with_pandas.py" "$file" > /dev/null
done
median() { tail -5 "$1" | sort -n | sed -n 3p; }
o=$(median "$work/ours.t"); t=$(median "$work/theirs.t")
echo "median of 5: ours $o | pandas $t   (wall s, user s, system s, KB)"
awk -v o="${o%% *}" -v t="${t%% *}" 'BEGIN { printf "ratio of whole-process times %.2f\n", o / t }'
