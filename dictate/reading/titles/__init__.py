"""Limbs, sides, organs and positions that stand as titles over what is told behind them."""
