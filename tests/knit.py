#!/usr/bin/env python3
"""Every plan knitted row by row on a simulated bed, and the fabric compared with the charts.

SPDX-License-Identifier: GPL-3.0-or-later
"""
import json, os, sys
sys.path.insert(0, os.path.dirname(os.path.abspath(__file__)))
from knit_wanted import check_plan
from knit_bed import Wrong
