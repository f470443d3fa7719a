# The seed is the one written at the head of data/houses/make_sales.cpp.
execute_process(COMMAND ${MAKE_SALES} --seed 1907 --from 2024-11-26 --days 730 OUTPUT_FILE ${MADE} RESULT_VARIABLE result)
if(NOT result EQUAL 0)
  message(FATAL_ERROR "make-sales ended with ${result}")
endif()
execute_process(COMMAND ${CMAKE_COMMAND} -E compare_files ${MADE} ${SHIPPED} RESULT_VARIABLE different)
if(NOT different EQUAL 0)
  message(FATAL_ERROR "${SHIPPED} is not what its seed gives: ${MADE}")
endif()
