"""What to buy from whom, so that it comes in time and costs least; answered on what is owed and planned."""
