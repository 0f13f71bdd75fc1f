"""The peer: reads the same file with pandas and prints the number of rows and the sum of the indications."""
import sys

import pandas

table = pandas.read_csv(sys.argv[1])
print(len(table), f"{table['Indicated (mA)'].sum():.4f}")
